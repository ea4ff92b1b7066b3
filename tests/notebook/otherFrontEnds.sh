#!/bin/sh
# Repeats in JupyterLab, Notebook 7 and papermill what CI tries in Debian's notebook. Needs a Python package
# index, which CI has not: run by hand, and note result and versions in docs/front-ends.md.
#
#   npm run build && sh tests/notebook/otherFrontEnds.sh
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
python3 -m venv "$work/python"
"$work/python/bin/pip" install --quiet jupyterlab notebook papermill nbclient
PATH="$work/python/bin:$PATH"
export JUPYTER_DATA_DIR="$work/data"
node "$root/bin/loambook.cjs" kernel --for-jupyter
node "$root/bin/loambook.cjs" notebooks "$work/course"
cd "$work/course"
pip list --format=freeze | grep -E '^(jupyterlab|notebook|papermill|nbclient|nbconvert)=='

echo "papermill: parameters, and an error told"
python - <<'PYTHON'
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
papermill.execute_notebook("permit-appendix.ipynb", "made.ipynb", language="typescript",
                           parameters={"studyFolder": "data-examples/bus-shelter"})
PYTHON
grep -c '"image/svg+xml"' made.ipynb

echo "JupyterLab and Notebook 7: a first open, then all cells, in Chromium"
for page in lab notebook; do
  jupyter "$page" --no-browser --allow-root --ServerApp.token= --ServerApp.password= \
    --port 8897 --LabApp.expose_app_in_browser=True --JupyterNotebookApp.expose_app_in_browser=True \
    > "$work/$page.log" 2>&1 &
  server=$!
  node "$root/tests/notebook/otherFrontEnds.mjs" "$page" "$work/$page" || echo "$page failed"
  kill "$server"
  wait "$server" 2> /dev/null || true
done
echo "Pictures to look at: $work"
