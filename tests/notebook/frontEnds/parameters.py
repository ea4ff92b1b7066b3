# Gives a notebook parameters by papermill, which needs to be told how our language writes them; see run.sh.
#
#   python parameters.py <notebook>
import json
import sys

import papermill
from papermill.translators import Translator, papermill_translators


class TypeScript(Translator):
    @classmethod
    def translate_none(cls, val):
        return "undefined"

    @classmethod
    def translate_bool(cls, val):
        return "true" if val else "false"

    @classmethod
    def comment(cls, cmt_str):
        return f"// {cmt_str}".strip()

    @classmethod
    def assign(cls, name, str_val):
        return f"let {name} = {str_val};"


papermill_translators.register("typescript", TypeScript)
made = papermill.execute_notebook(
    sys.argv[1], None, parameters={"studyFolder": "data-examples/reading-room"}
)
text = json.dumps(made)
assert "let studyFolder = \\\"data-examples/reading-room\\\";" in text
print(f"papermill {papermill.__version__}: parameters given, {text.count('image/svg+xml')} figures")
