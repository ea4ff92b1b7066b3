#!/bin/sh
# Does in JupyterLab 4 and Notebook 7 what CI does in Debian's notebook 6.4: opens a notebook that is not trusted,
# runs it, fails, interrupts, asks for help, saves; and gives parameters by papermill. Needs Chromium and a Python
# package index, which CI has not: run by hand, and note result and versions in docs/front-ends.md.
#
#   npm run build && sh tests/notebook/frontEnds/run.sh [folder]
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../../.." && pwd)
work=${1:-$(mktemp -d)}
mkdir -p "$work"
python3 -m venv "$work/python"
PATH="$work/python/bin:$PATH"
pip install --quiet jupyterlab notebook
pip install --quiet papermill || echo "papermill is not on this index."
pip list --format=freeze | grep -E '^(jupyterlab|notebook|jupyter_server|papermill)=='

export JUPYTER_DATA_DIR="$work/data"
export JUPYTER_CONFIG_DIR="$work/config"
rm -rf "$JUPYTER_DATA_DIR" "$work/course"
node "$root/bin/loambook.cjs" kernel --for-jupyter > /dev/null
node "$root/bin/loambook.cjs" notebooks "$work/course" > /dev/null
cd "$work/course"
if pip show --quiet papermill; then python "$here/parameters.py" permit-appendix.ipynb; fi

# with its results, as one notebook is sent to another reader
node "$root/bin/loambook.cjs" run mix-design.ipynb --out from-elsewhere.ipynb
server=
trap 'test -z "$server" || kill "$server"' EXIT
for application in lab notebook; do
  # Jupyter has never seen it
  rm -f "$JUPYTER_DATA_DIR/nbsignatures.db"
  cp from-elsewhere.ipynb executed.ipynb
  jupyter "$application" --no-browser --allow-root --ServerApp.token= --ServerApp.password= \
    --ServerApp.port=8897 --LabApp.expose_app_in_browser=True \
    --JupyterNotebookApp.expose_app_in_browser=True > "$work/$application.log" 2>&1 &
  server=$!
  node "$here/look.mjs" "$application" http://127.0.0.1:8897 "$work/course" "$work"
  kill "$server"
  wait "$server" 2> /dev/null || true
  server=
done
echo "Pictures to look at: $work"
