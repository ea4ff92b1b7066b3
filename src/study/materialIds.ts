import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { say } from "../words/message.js";

type Materials = { readonly materials: readonly { readonly id: string }[] };

/** Where `study.yaml` has an entry of a material. */
export function materialPlace({ materials }: Materials, id: string, key: string) {
  const index = materials.findIndex((material) => material.id === id);
  return { file: STUDY_FILE, column: `materials.${index}.${key}` };
}

/** An id that an entry names and no material has. */
export function unknownMaterial({ materials }: Materials, column: string, id: string): Finding[] {
  const known = materials.map((material) => material.id);
  if (known.includes(id)) return [];
  return [
    finding({ file: STUDY_FILE, column, value: id }, "error", "unknown-material", {
      message: say`No material of the study has this id.`,
      expected: say`one of ${known.join(", ")}`,
      remedy: say`Correct the id, or add the material.`,
    }),
  ];
}
