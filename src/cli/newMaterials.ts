import type { NewMaterial } from "./newAnswers.js";
import { sheetsOf } from "./sheetsOf.js";
import type { TemplateMaterial } from "./studyTemplate.js";

const SHEETS = ["sieve", "hydrometer", "limits"] as const;

/** A material of a new study: whose numbers it borrows, and which example sheets are copied for it. */
export interface PlacedMaterial extends NewMaterial {
  readonly id: string;
  readonly model: TemplateMaterial;
  readonly sheets: readonly {
    readonly test: (typeof SHEETS)[number];
    readonly from: string;
    readonly to: string;
  }[];
}

/** Words of a name as an id of the study format; none are left of some scripts. */
function idOf(name: string, role: string): string {
  const words =
    name
      .normalize("NFKD")
      .replace(/\p{M}/gu, "")
      .toLowerCase()
      .match(/[a-z0-9]+/g) ?? [];
  const id = words
    .join("-")
    .slice(0, 40)
    .replace(/^[^a-z]+|-+$/g, "");
  return id === "" ? role : id;
}

/** Gives each material an id of its own and an example of its kind; where examples run out they serve again. */
export function placeMaterials(
  materials: readonly NewMaterial[],
  examples: readonly TemplateMaterial[],
): PlacedMaterial[] {
  const ids = new Set<string>();
  const served = new Map<string, number>();
  return materials.map(({ role, name }) => {
    const alike = examples.filter((example) => example.role === role);
    const turn = served.get(role) ?? 0;
    served.set(role, turn + 1);
    const model = alike[turn % alike.length];
    const first = idOf(name, role);
    let id = first;
    for (let again = 2; ids.has(id); again++) id = `${first}-${again}`;
    ids.add(id);
    const sheets = SHEETS.flatMap((test) =>
      sheetsOf(model[test]).map((from) => ({
        ...{ test, from },
        to: `sheets/${id}-${test}${/\.[^.]+$/.exec(from)?.[0] ?? ""}`,
      })),
    );
    return { role, name, id, model, sheets };
  });
}
