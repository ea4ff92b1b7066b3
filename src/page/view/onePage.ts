/** A sheet of Letter without its margins. A4 is 6 mm narrower and 18 mm higher: what fits Letter fits it too. */
const [WIDTH_MM, HEIGHT_MM] = [191.9, 258];
/** The largest letters that a page is printed in, and the smallest: below them it takes a second sheet. */
const [LARGEST_PT, SMALLEST_PT, STEP_PT] = [8.4, 6, 0.2];

/**
 * Prints a view on one sheet of paper: before it is printed, its charts are drawn for paper, and its letters are
 * made as large as the sheet allows.
 *
 * @param applies whether the view that is shown is to stand on one sheet.
 * @param draw draws the charts, for paper or for the screen.
 */
export function printOnOnePage(applies: () => boolean, draw: (paper: boolean) => void): void {
  const root = document.documentElement;
  addEventListener("beforeprint", () => {
    if (!applies()) return;
    draw(true);
    asOnPaper(() => {
      let size = LARGEST_PT;
      do {
        root.style.fontSize = `${size.toFixed(1)}pt`;
        size -= STEP_PT;
      } while (heightMm() > HEIGHT_MM && size >= SMALLEST_PT);
    });
  });
  addEventListener("afterprint", () => {
    root.style.fontSize = "";
    if (applies()) draw(false);
  });
}

/** Lays the page out as it is printed while something is measured. */
function asOnPaper(measure: () => void): void {
  const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]);
  const print = rules.filter(
    (rule) => rule instanceof CSSMediaRule && rule.media.mediaText === "print",
  ) as CSSMediaRule[];
  const { style } = document.body;
  for (const { media } of print) media.mediaText = "all";
  style.width = `${WIDTH_MM}mm`;
  measure();
  style.width = "";
  for (const { media } of print) media.mediaText = "print";
}

function heightMm(): number {
  return (document.getElementById("page")!.getBoundingClientRect().height * 25.4) / 96;
}
