/** The README's line about docs/bench.md. */
export const README_LINE = /^\| \[docs\/bench\.md\]\(docs\/bench\.md\) \|.*$/m;

/** What the README quotes of the page that the bench writes: its line in the table of documents. */
export function quoteOf(page) {
  const rows = page
    .split("\n")
    .filter((line) => line.startsWith("| ") && line.includes(", processor time |"))
    .map((line) => line.split(" | "))
    .map((cells) => ({
      what: cells[0].slice(2),
      ratio: / of its time| times as fast/.exec(cells[4]) && cells[4],
    }))
    .filter(({ ratio }) => ratio);
  const [appendix, ...calculations] = rows.map(({ ratio }) =>
    ratio.includes("times as fast") ? 1 / Number.parseFloat(ratio) : Number.parseFloat(ratio),
  );
  const times = calculations.map((part) => 1 / part).sort((a, b) => a - b);
  const [least, most] = [times[0], times.at(-1)].map((value) => String(Math.floor(value)));
  return `| [docs/bench.md](docs/bench.md) | how long it takes beside the usual tools, in processor time: the appendix ${appendix.toFixed(2)} of that of the same notebook executed and converted by Jupyter's tools and printed by Chromium, calculations ${least} to ${most} times as fast as with SciPy and statsmodels |`;
}
