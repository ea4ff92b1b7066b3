import { USDA_POLYGONS } from "../soil/usdaPolygons.js";
import type { UsdaTexture } from "../soil/usdaTexture.js";
import { soilName } from "../words/soilName.js";
import { QUIET } from "./quietColours.js";
import { texturePlace } from "./texturePlace.js";

/** Where the middle of the corners would put a name on a border: clay, silt. */
const NAME_AT: Readonly<Record<string, readonly [number, number]>> = {
  sand: [3, 3.5],
  // Off the middle, where most soils for ramming lie.
  "sandy loam": [14.5, 14],
  loam: [23.5, 36],
  "loamy sand": [3.6, 14.6],
  silt: [5, 87],
};

/** A long name on two lines, broken before what it is called after. */
function onTwoLines(name: string): string {
  return name.length > 10 || / clay$|loamy /.test(name) ? name.replace(" ", "<br>") : name;
}

/** At the middle of a class's corners; names of more than one word on two lines. */
export function textureNames(): object[] {
  return (Object.keys(USDA_POLYGONS) as UsdaTexture[]).map((texture) => {
    const corners = USDA_POLYGONS[texture];
    const middle = (part: 0 | 1) =>
      corners.reduce((sum, corner) => sum + corner[part], 0) / corners.length;
    return {
      text: onTwoLines(soilName(texture)),
      ...texturePlace(...(NAME_AT[texture] ?? ([middle(0), middle(1)] as const))),
      showarrow: false,
      font: { size: 11, color: QUIET.letters },
    };
  });
}
