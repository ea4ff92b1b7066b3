export const MAIN_HELP = `loambook: from lab sheets to a specified rammed-earth mix and its technical appendix

Usage: loambook <command> [options]

Commands
  new <folder>          start a study: a copy of an example to fill with your own sheets
  check <study>         read a study and list everything that is wrong or doubtful in it
  compute <study>       compute a study; a short summary, or everything with --json
  appendix <study>      make the technical appendix (HTML and PDF)
  run <notebook>        run a notebook from top to bottom without a window
  site <study>          sheets for the crew: bucket card, making log, block labels, moisture check
  plan <file>           how many blocks to make and crush, as a sheet to fill in
  survey <file>         fit and classify many gradings of one CSV file
  kernel                write the kernel description for Jupyter and say how to use it

A study is a folder that holds study.yaml and the lab sheets it names.
“loambook <command> --help” tells more about a command.

Exit codes
  0  done                          4  a notebook cell failed
  1  a fault in loambook           5  the notebook kernel died
  2  wrong call                    6  time-out (start, cell or whole run)
  3  the study has errors          7  output exists already or cannot be written

The numbers do not replace a licensed engineer, a laboratory or the local code.
`;

export const COMMAND_HELP = {
  new: `Usage: loambook new <folder> [--units SI|US]

Writes a study that computes at once: study.yaml and a set of sheets, all of them invented.
Replace the sheets and the entries by your own, then set “invented: false”.
The folder must not exist yet, or be empty.

  --units SI|US   units of the sheets and of the report (default SI)
`,
  check: `Usage: loambook check <study> [--json]

Reads study.yaml and every sheet, runs the analysis, and lists all findings at once:
errors (the study cannot be used), warnings (look at this), notes (something was done or left unused).
Each names the file, row, column and value, says what was expected and what you can do.
Ends with 3 if there is an error. Writes nothing.

  --json          the findings as JSON
`,
  compute: `Usage: loambook compute <study> [--json] [--out <file>]

Computes the study: grading curves, limits, compaction, blend, strength, least cement, recipe, quantities.

  --json          the whole result as JSON at full precision (its shape: README, “The result as JSON”)
  --out <file>    write there instead of to the screen; the file must not exist yet
`,
  appendix: `Usage: loambook appendix <study> [--out <folder>] [--replace] [--standard a-2a|ua-1]

Checks the study, runs the notebook permit-appendix.ipynb with it, and writes into a new folder:
appendix.html (one file, opens offline), appendix.pdf, appendix.ipynb (as executed), result.json.

  --out <folder>       where to (default: appendix-<study> in this folder, with a number if that exists)
  --replace            write over a folder that an earlier run made
  --standard <name>    PDF standard: a-2a (archival, default) or ua-1 (accessible)
`,
  run: `Usage: loambook run <notebook> [--study <folder>] [--set <name>=<value> …] [--out <file>] [time-outs]

Runs every cell from top to bottom in a fresh kernel. Values for the notebook's “parameters” cell
are given with --set (numbers, true, false, or text; a text of digits in double quotes);
--study sets “studyFolder”.
The notebook itself is never changed.

  --out <file>             write the executed notebook there; the file must not exist yet
  --start-seconds <n>      time-out for the kernel's start (default 60)
  --cell-seconds <n>       time-out for one cell (default 120)
  --total-seconds <n>      time-out for the whole run (default 600)
`,
  site: `Usage: loambook site <study> [--out <folder>] [--replace] [--field-tests]

Writes the sheets that a crew prints, each as HTML and PDF in large type: bucket card, making and curing
log, block labels, moisture check, order list.

  --out <folder>   where to (default: site-<study> in this folder, with a number if that exists)
  --replace        write over a folder that an earlier run made
  --field-tests    forms for the field tests (jar, ball, ribbon, shrinkage box, wash and smell) too
`,
  plan: `Usage: loambook plan <file> --contents 4,6,8,10 --difference "0.3 MPa" --sd "0.25 MPa" [options]

Plans the fewest blocks that tell two cement contents apart, and writes a CSV sheet with their random
order of making and crushing. Filled in, it is the block sheet of a study. The file must not exist yet.

  --contents <list>      cement contents, percent of the dry mass of soil and aggregate
  --difference <value>   the difference of mean strength to be seen (power 90 %, two-sided 5 %)
  --sd <value>           expected standard deviation of blocks of one content
  --age <value>          age at crushing (default 28 d)
  --batches <n>          batches mixed on different days for each content (default 2)
  --seed <n>             of the random order (default 1)
`,
  survey: `Usage: loambook survey <file> --out <file> [--model weibull|lognormal|power] [--threads <n>]

Reads a CSV file with one grading a row and writes a table of fits, sizes, fractions and classes.
Header: id, then sieves in mm or by designation (percent passing stands below them) and, where known,
liquid limit (%) and plasticity index (%). A row that cannot be read is left out, with the reason.
The file is read as a stream: its length does not matter.

  --out <file>     the table; the file must not exist yet
  --model <name>   model to fit (default weibull)
  --threads <n>    worker threads, 0 for none (default 2)
`,
  kernel: `Usage: loambook kernel [--folder <folder>]

Writes the kernel description “loambook” for Jupyter and prints the JUPYTER_PATH to start it with.
Nothing outside the folder is touched.

  --folder <folder>   default: .jupyter in this folder
`,
} as const;

export type CommandName = keyof typeof COMMAND_HELP;
