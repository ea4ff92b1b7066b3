import type { UnitSystem } from "../quantities/displayUnits.js";
import { formatQuantity } from "../quantities/displayUnits.js";
import type { CompactionAnalysis } from "../soil/compactionAnalysis.js";
import { moistureWindow } from "../soil/moistureWindow.js";
import { say } from "../words/say.js";
import { fixed } from "./cell.js";
import type { KeyValuesBlock } from "./reportBlock.js";

/**
 * How wet the mix may be rammed: the water contents that keep a share of the maximum dry density of the
 * compaction test.
 *
 * @param relativePct percent of the maximum; default as `moistureWindow`: 98 (common practice, no source).
 * @returns `undefined` where the points show no top.
 * @throws RangeError where the share is not above 0 and at most 100.
 *
 * @example
 * const points = [[6.5, 1872], [8.7, 1966], [10.6, 2043], [12.2, 2068], [14.4, 1996]].map(([waterContentPct, moistMassG], index) => ({ waterContentPct, moistMassG, row: index + 5 }));
 * moistureWindowTable(analyseCompaction({ file: "c.csv", mouldVolumeCm3: 1000, points }), "SI").items[1].value // => "8.0 %"
 */
export function moistureWindowTable(
  compaction: CompactionAnalysis,
  units: UnitSystem,
  relativePct?: number,
): KeyValuesBlock | undefined {
  const window = moistureWindow(compaction, relativePct);
  if (!window) return undefined;
  const { driestPct, wettestPct, openDry, openWet, leastDryDensityKgM3 } = window;
  const percent = (value: number) => `${fixed(value, 1)} %`;
  return {
    kind: "keyValues",
    caption: say`Moisture to ram in, by the compaction test`,
    items: [
      {
        label: say`Dry density to keep`,
        value: say`${window.relativePct} % of the maximum (common practice, no source): at least ${formatQuantity(leastDryDensityKgM3, "density", units, 4)}`,
      },
      {
        label: say`Driest`,
        value: openDry
          ? say`${percent(driestPct)}, where the tests end: drier was not tested`
          : percent(driestPct),
      },
      {
        label: say`Wettest`,
        value: openWet
          ? say`${percent(wettestPct)}, where the tests end: wetter was not tested`
          : percent(wettestPct),
      },
      {
        label: say`Holds for`,
        value: say`the compactive effort of the test: a heavier rammer has a drier window, a lighter one a wetter`,
      },
    ],
  };
}
