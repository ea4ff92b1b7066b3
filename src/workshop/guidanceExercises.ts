import type { GuidanceComparison } from "../guidance/compareGuidance.js";
import { say } from "../words/say.js";
import type { Exercise } from "./exercise.js";

/**
 * Two exercises on published limits: how many of the recommendations the soil is outside of, and what
 * lying inside proves.
 *
 * Source: `compareGuidance`; the second with the source that the checks themselves name.
 */
export function guidanceExercises({ checks, disagreements }: GuidanceComparison): Exercise[] {
  const count = (verdict: string) => checks.filter((check) => check.verdict === verdict).length;
  const [outside, inside, incomplete] = ["outside", "inside", "incomplete"].map(count);
  const named = checks
    .filter(({ verdict }) => verdict === "outside")
    .map(({ entry }) => entry.id)
    .join(", ");
  const differ = disagreements.filter(({ verdictsDiffer }) => verdictsDiffer).length;
  return [
    {
      kind: "number",
      id: "outside-of-how-many",
      question: say`Of the ${checks.length} recommendations in the table, how many is the soil outside of?`,
      unit: "",
      value: outside,
      tolerance: { abs: 0.001 },
      wrongTurns: [
        {
          value: inside,
          text: say`That many the soil is inside of, with all that they limit.`,
        },
        {
          value: inside + incomplete,
          text: say`Those are the ones that it is not outside of. Count the others.`,
        },
        {
          value: outside + incomplete,
          text: say`Those that could not be judged, because something was not measured, count neither way.`,
        },
        {
          value: differ,
          text: say`That is how many things they find this soil both inside and outside of.`,
        },
      ],
      hint: say`One criterion outside is enough to be outside of the recommendation.`,
      worked: outside === 0 ? say`None of them.` : say`${outside} of them: ${named}.`,
      why: say`Inside of ${inside}, outside of ${outside}, and ${incomplete} ask for something that was not measured. One and the same soil: the recommendations disagree.`,
    },
    {
      kind: "choice",
      id: "what-inside-proves",
      question: say`A soil lies inside an envelope. Does that prove it suitable? Answer "yes", "no" or "only for walls".`,
      options: ["yes", "no", "only for walls"],
      value: "no",
      wrongTurns: [
        {
          value: "yes",
          text: say`Soils made to lie inside such limits did not all do well when they were tested.`,
        },
        {
          value: "only for walls",
          text: say`The limits are written for walls, and even there they prove nothing.`,
        },
      ],
      hint: say`Read the last note under the table of recommendations.`,
      worked: say`No. ${checks[0]?.caution ?? ""}`,
      why: checks[0]?.caution ?? "",
    },
  ];
}
