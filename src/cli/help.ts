import { ANNEX_KEYS, USUAL_ANNEXES } from "../entries/report.js";

const OTHER_ANNEXES = ANNEX_KEYS.filter((key) => !USUAL_ANNEXES.includes(key));

export const MAIN_HELP = `loambook: from lab sheets to a specified rammed-earth mix and its technical appendix

Usage: loambook <command> [options]

Commands
  new <folder>          start a study: a few questions, and invented sheets to replace with your own
  check <study>         read a study, or sheets alone, and list everything that is wrong or doubtful in it
  compute <study>       compute a study, or sheets alone; a short summary, or everything with --json
  compare <study> <study>  what differs between two versions of a study, and what causes it
  looks <study|sheet>   what was seen on trial blocks, side by side
  appendix <study>      make the technical appendix (HTML and PDF)
  run <notebook>        run a notebook from top to bottom without a window
  report <notebook>     make HTML and PDF from an executed notebook
  page [<study>]        the mix page: one HTML file to tune, solve and compare on, offline
  site <study>          the mix on one page, and sheets for the crew: buckets, log, labels, moisture
  plan <file>           how many blocks to make and crush, as a sheet to fill in
  survey <file>         fit and classify many gradings of one CSV file
  export <study>        every table as CSV and XLSX, every figure as SVG and PNG, the result as JSON
  schema study|result   the JSON Schema of study.yaml (for an editor) or of the result
  notebooks <folder>    write a working copy of the notebooks, with the example studies they open
  kernel                write the kernel description for Jupyter and say how to use it

A study is a folder that holds study.yaml and the lab sheets it names.
“loambook <command> --help” tells more about a command.

Exit codes
  0  done                          4  a notebook cell failed
  1  internal error                5  the notebook kernel died
  2  usage error                   6  time-out (start, cell or whole run)
  3  the study has errors          7  output exists already or cannot be written

The numbers do not replace a licensed engineer, a laboratory or the local code.
`;

export const COMMAND_HELP = {
  new: `Usage: loambook new <folder> --sheets <sheet> <sheet> … [--title <text>] …
       loambook new <folder> [--units SI|US] [--title <text>] … [--no-questions]

With sheets of your own (CSV or XLSX) it copies them, recognises each by its columns, and writes a study.yaml
that holds what they tell and nothing else; what only you can know stands there as comments.
Without sheets it writes a study that computes at once: study.yaml, a set of invented sheets named after your
materials, and study.schema.json for editors. On a terminal it asks for what no option says. The head of
study.yaml says which sheet to replace first.
What the blend aims at is never chosen for you. The folder must not exist yet, or be empty.

  --sheets <sheet> …    lab sheets; name a file after its material, such as river-sand-sieve.csv
  --units SI|US         units of the sheets and of the report (default SI)
  --title, --place      texts of the title page
  --language <name>     en (default) or es, or with a country (es-MX)
  --page A4|us-letter   paper
  --currency <text>     of the prices
  --date <date>         of the report, year-month-day
  --material <text>     role and name, such as “sand: River sand 0/4”; once for each material, with one soil
  --length, --height, --thickness <value>   of the wall, such as “6.4 m”
  --strength <value>    required strength, such as “1.5 MPa”
  --no-questions        ask nothing, also on a terminal
`,
  check: `Usage: loambook check <study> | <sheet> … [--json]

Reads study.yaml and every sheet, runs the analysis, and lists all findings at once:
errors (the study cannot be used), warnings (look at this), notes (something was done or left unused).
Each names the file, row, column and value, says what was expected and what you can do.
Without errors it ends with what to look at first, what comes next, which sheet would supply a
missing number and, once blocks are crushed, what a permit reader would miss.
Sheets alone (CSV or XLSX, or a folder without study.yaml) are each recognised by their columns; a file named
after its material, such as river-sand-sieve.csv, belongs to that one.
Ends with 3 if there is an error. Writes nothing.

  --json          the findings as JSON
`,
  compute: `Usage: loambook compute <study> | <sheet> … [--json] [--out <file>]

Computes the study as far as its sheets and entries go: grading curves, limits, compaction, blend, strength,
least cement, recipe, quantities. What is not yet known it names, with the sheet that would supply it.
One sheet is enough: “loambook compute sieve.csv”.

  --json          the whole result as JSON at full precision (described in docs/result.md)
  --out <file>    write there instead of to the screen; the file must not exist yet
`,
  compare: `Usage: loambook compare <study> <study> [--json] [--out <file>]

Computes both and sets the second against the first: blend, density, strength, cement, quantities, cost and
carbon with their differences; which part of the study each difference is due to, found by putting the parts
of the second into the first one after the other; and the entries and sheets that changed.
In the language and units of the second. A blend that was not tested has no strength or cement to compare.

  --json          the comparison as JSON at full precision
  --out <file>    write there instead of to the screen; the file must not exist yet
`,
  looks: `Usage: loambook looks <study|sheet> [--json] [--out <folder>] [--replace]

Shows what was seen on trial blocks side by side: texture, edges, cracks, colour when dry, who and when; the
colour differences between them; and what is amiss, such as a colour taken before a block was dry.
From a study it takes the sheets under “looks” of its trials, from a file that sheet alone (CSV or XLSX).
It makes no judgement: which block looks right is for the builder to decide.

  --json           the same as JSON
  --out <folder>   of a study: HTML and PDF with it, and with the photographs that the sheets name (PNG or JPEG
                   files in the study folder), small and side by side; a new folder
  --replace        write over a folder that an earlier run made
`,
  appendix: `Usage: loambook appendix <study> [--annexes <list>] [--template permit|handout] [--standard <name>]
       [--attach] [--out <folder>] [--replace]

Checks the study, runs the notebook permit-appendix.ipynb with it, and writes into a new folder:
appendix.html (one file, opens offline), appendix.pdf, appendix.ipynb (as executed), result.json.

  --out <folder>       where to (default: appendix-<study> in this folder, with a number if that exists)
  --replace            write over a folder that an earlier run made
  --annexes <list>     annexes with commas between them, all, or none; default: those of the study, else
                       ${USUAL_ANNEXES.join(",")}
                       (others: ${OTHER_ANNEXES.join(",")})
  --template <name>    permit (for a reviewer, default) or handout (for a workshop: short head, larger type)
  --standard <name>    PDF standard: a-2a (archival, default), a-3a (the same, may hold files),
                       ua-1 (accessible) or none
  --attach             put result.json, study.yaml and the sheets into the PDF (standard a-3a)
  --cell-seconds <n>, --total-seconds <n>, --start-seconds <n>
                       time-outs of the notebook, as of “loambook run”

Logo, colour, texts, style sheet, Typst file and fonts: the entry “report” of study.yaml (docs/reports.md).
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
  report: `Usage: loambook report <executed notebook> --study <folder> | --date <day> [options]

Makes one HTML and one PDF file from any notebook that has been run (“loambook run … --out”).
From the study come date, place, language, page and styling; without one, a date is needed.

  --template <name>    permit (default) or handout: larger type, short head, and lines to write on below
                       cells tagged “exercise” (or “exercise-8” for eight lines)
  --annexes code       show the code of the cells, too
  --title <text>       default: the notebook's first heading
  --date <day>         year-month-day; default: that of the study
  --page <name>        A4 or us-letter; default: that of the study, or A4
  --language en|es     of the words around the notebook's own; default: that of the study, or en
  --standard <name>    PDF standard: a-2a (default), a-3a, ua-1 or none
  --attach             put the study's files into the PDF (standard a-3a)
  --out <folder>       where to (default: report-<notebook> in this folder, with a number if that exists)
  --replace            write over a folder that an earlier run made
`,
  page: `Usage: loambook page [<study>] [--out <file>] [--replace]

Writes the mix page: one HTML file that opens in any browser without a network. On it shares, cement and
moisture are tuned, with verdicts, strength, recipe, cost and carbon at once; solvers find shares; sheets are
dropped or typed; groups of a class are set side by side; the mix is saved as a study folder.
Without a study it is an empty bench for sheets of your own.

  --out <file>   where to (default: page-<study>.html in this folder)
  --replace      write over a file that is there
`,
  site: `Usage: loambook site <study> [--out <folder>] [--replace] [--field-tests]

Writes the sheets that a crew prints, each as HTML and PDF in large type: bucket card, making and curing
log, block labels, moisture check, the mix on one page, order list.

  --out <folder>   where to (default: site-<study> in this folder, with a number if that exists)
  --replace        write over a folder that an earlier run made
  --field-tests    forms for the field tests (jar, ball, ribbon, shrinkage box, wash and smell) too
`,
  plan: `Usage: loambook plan <file> --contents 4,6,8,10 --difference "0.3 MPa" --sd "0.25 MPa" [options]

Plans the fewest blocks that tell two cement contents apart, and writes a CSV sheet with their random
order of making and crushing. Filled in, it is the block sheet of a study. The file must not exist yet.

  --contents <list>      cement contents, percent of the dry mass of soil and aggregate
  --difference <value>   the difference of mean strength to be seen (power 90 %, two-sided 5 %); in psi the sheet
                         has inches and pounds
  --sd <value>           expected standard deviation of blocks of one content
  --age <value>          age at crushing (default 28 d)
  --batches <n>          batches mixed on different days for each content (default 2)
  --seed <n>             of the random order (default 1)
`,
  survey: `Usage: loambook survey <file> --out <file> [--model weibull|lognormal|power] [--threads <n>]

Reads a CSV file with one grading per row and writes a table of fits, sizes, fractions and classes.
Header: id, then sieves in mm or by designation (with percent passing below them) and, where known,
liquid limit (%) and plasticity index (%). A row that cannot be read is left out, with the reason.
The file is read as a stream: its length does not matter.

  --out <file>     the table; the file must not exist yet
  --model <name>   model to fit (default weibull)
  --threads <n>    worker threads, 0 for none (default 2)
`,
  export: `Usage: loambook export <study> [--out <folder>] [--replace]

Runs the notebook of the appendix with the study and writes what it shows, for other programs:
table-NN-….csv (a decimal point in every language, units in the header), tables.xlsx (all tables, numbers
as numbers), figure-NN-….svg and .png, contents.csv (what is in which file, with captions, notes and the
figures' text alternatives), result.json. Numbers of tables and figures are those of the appendix.
CSV and XLSX hold the digits that the appendix prints; result.json holds full precision.
Text that a spreadsheet could take for a formula (it begins with = + - @, a tab or a line end) gets an
apostrophe before it in CSV, and is stored as text in XLSX.

  --out <folder>   where to (default: export-<study> in this folder, with a number if that exists)
  --replace        write over what an earlier run made; other files there are left alone, and named
  --cell-seconds <n>, --total-seconds <n>, --start-seconds <n>
                   time-outs of the notebook, as of “loambook run”
`,
  schema: `Usage: loambook schema study|result [--out <file>] [--draft 2020-12|7]

Prints a JSON Schema: of study.yaml, so that an editor checks it while you type, or of result.json.

  --out <file>     write there instead of to the screen; the file must not exist yet
  --draft <name>   for study: 2020-12 (default), or 7 for editors that know no later one
`,
  notebooks: `Usage: loambook notebooks <folder> [--class] [--teacher] [--from <study>]
       [--language en|es] [--units SI|US]

Writes the notebooks into a new folder, without results, and beside them the example studies that they
open and, in print/, the worksheet and the sheets to fill in of a class. They run there as in the clone, in
Jupyter and with “loambook run”: the kernel brings the package.

  --class            what a class of two hours needs, and nothing else
  --teacher          the same, and the teacher's page and the key in a folder of their own: <folder>-teacher
  --from <study>     a class's own study, with its class.csv, in place of the one that comes with the notebooks
  --language <name>  of the class's notebooks and paper: en (default) or es
  --units <name>     of the class's numbers and paper: SI (default) or US
`,
  kernel: `Usage: loambook kernel [--folder <folder>]
       loambook kernel --for-jupyter [--replace]

Writes the kernel description “loambook” for Jupyter and prints the JUPYTER_PATH to start it with.
Nothing outside the folder is touched.

  --folder <folder>   default: .jupyter in this folder
  --for-jupyter       sets the kernel up in your own Jupyter instead: says which file it writes (in the
                      data folder that “jupyter --paths” names), and needs no JUPYTER_PATH afterwards
  --replace           with --for-jupyter: write over a kernel “loambook” that is there and differs
`,
} as const;

export type CommandName = keyof typeof COMMAND_HELP;
