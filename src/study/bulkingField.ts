import { z } from "zod";
import { sandBulking } from "../batch/sandBulking.js";
import { say } from "../words/say.js";
import { metres, percent } from "./schemaFields.js";
import { writtenAs } from "./writtenForm.js";

const heights = z
  .strictObject({ damp: metres("200 mm"), flooded: metres("160 mm") })
  .transform(({ damp, flooded }, context): number => {
    const { bulkingPct, message } = sandBulking({ dampHeight: damp, floodedHeight: flooded });
    if (bulkingPct !== null) return bulkingPct;
    context.addIssue({
      code: "custom",
      message,
      params: {
        expected: say`a flooded height at most the damp one`,
        value: `${damp} m, ${flooded} m`,
      },
    });
    return z.NEVER;
  });

const share = percent("20 %", 60);
const field = z.unknown().transform((entry, context): number => {
  const outcome = (typeof entry === "object" ? heights : share).safeParse(entry);
  if (outcome.success) return outcome.data;
  for (const issue of outcome.error.issues) context.addIssue({ ...issue, code: "custom" });
  return z.NEVER;
});

/**
 * `bulking` of a material whose bulk density was measured dry: percent, or the two heights of the
 * flooding test.
 */
export const bulkingField = field.register(writtenAs, { schema: z.union([share, heights]) });
