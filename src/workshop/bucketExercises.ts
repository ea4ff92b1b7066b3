import { toMassShares } from "../batch/toMassShares.js";
import type { BucketChange } from "../blend/bucketSensitivity.js";
import { formatFixed, formatPlain } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { ClassBlend } from "./classBlend.js";
import type { Exercise } from "./exercise.js";

/** The bucket recipe of the exercise: soil, then sand. */
const BUCKETS = [3, 1] as const;

/**
 * Exercises on buckets: what buckets of soil and sand are by mass, and which miscount takes the blend
 * furthest from its target. The second is left out where no whole-number recipe was found.
 *
 * Source: `toMassShares`, `bucketSensitivity`.
 */
export function bucketExercises({
  materials,
  looseDryDensityKgM3,
  parts,
  changes,
}: ClassBlend): Exercise[] {
  const [soilKgM3, sandKgM3] = looseDryDensityKgM3;
  const [soilBuckets, sandBuckets] = BUCKETS;
  const sandShare = (soil: number, sand: number) =>
    toMassShares(
      [
        { id: "soil", parts: soilBuckets, looseBulkDensityKgM3: soil },
        { id: "sand", parts: sandBuckets, looseBulkDensityKgM3: sand },
      ],
      { parts: 0, looseBulkDensityKgM3: 1000 },
    ).materials[1].sharePct;
  const value = sandShare(soilKgM3, sandKgM3);
  const kg = (number: number) => formatPlain(number);
  const byMass: Exercise = {
    kind: "number",
    id: "sand-by-mass",
    question: say`${soilBuckets} buckets of soil (${kg(soilKgM3)} kg/m³ dry, loose) and ${sandBuckets} of sand (${kg(sandKgM3)} kg/m³): which share of the dry mass is sand?`,
    unit: "%",
    value,
    tolerance: { abs: 0.5 },
    wrongTurns: [
      {
        value: sandShare(1, 1),
        text: say`This is the share of the buckets, by volume. A bucket of sand does not weigh as much as a bucket of soil.`,
      },
      {
        value: sandShare(sandKgM3, soilKgM3),
        text: say`The two densities were exchanged.`,
      },
      {
        value: (100 * sandBuckets * sandKgM3) / (soilBuckets * soilKgM3),
        text: say`This is sand to soil. A share is a part of the whole.`,
      },
    ],
    hint: say`Turn each into mass: buckets times density. Then the sand's part of the sum.`,
    worked: say`100 × ${sandBuckets} × ${kg(sandKgM3)} ÷ (${soilBuckets} × ${kg(soilKgM3)} + ${sandBuckets} × ${kg(sandKgM3)}) = ${formatFixed(value, 1)} %.`,
    why: say`One bucket in ${soilBuckets + sandBuckets} is ${formatFixed(value, 1)} % here. With other densities it is another share: weigh a full bucket of each.`,
  };
  const worst = changes.reduce<BucketChange | undefined>(
    (most, change) => (most && most.rmsDifferencePct >= change.rmsDifferencePct ? most : change),
    undefined,
  );
  if (parts.status !== "ok" || !worst) return [byMass];
  const used = materials.filter(({ id }) => changes.some((change) => change.id === id));
  const optionOf = ({ id, change }: Pick<BucketChange, "id" | "change">) =>
    `${id} ${change > 0 ? "+1" : "-1"}`;
  const points = (number: number) => formatFixed(number, 1);
  return [
    byMass,
    {
      kind: "choice",
      id: "worst-miscount",
      question: say`Which miscount of one bucket takes the blend furthest from its target? The recipe is ${used
        .map((material) => {
          const count = parts.materials.find(({ id }) => id === material.id)?.parts ?? 0;
          return `${count} ${material.id}`;
        })
        .join(", ")}.`,
      options: changes.map(optionOf),
      value: optionOf(worst),
      wrongTurns: changes
        .filter((change) => change !== worst)
        .map((change) => ({
          value: optionOf(change),
          text: say`That one leaves the blend ${points(change.rmsDifferencePct)} points from the target. Another is worse.`,
        })),
      hint: say`One bucket of few matters more than one of many.`,
      worked: say`${optionOf(worst)}: ${points(worst.rmsDifferencePct)} points from the target, in place of ${points(parts.rmsDifferencePct)}.`,
      why: say`It takes the blend from ${points(parts.rmsDifferencePct)} to ${points(worst.rmsDifferencePct)} points. Count that material aloud.`,
    },
  ];
}
