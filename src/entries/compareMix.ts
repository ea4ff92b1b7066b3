import { z } from "zod";
import { say } from "../words/message.js";
import { render } from "../words/render.js";
import { density, percent, text } from "./writtenValue.js";

/** Another mix of the same element, to see what the chosen one saves. */
export interface CompareConfig {
  readonly name: string;
  /** By material id; percent of the dry mass of soil and aggregate. What is not named has none. */
  readonly sharesPct: Readonly<Record<string, number>>;
  readonly cementPct: number;
  /** Rammed dry density of its solids; without it that of the chosen mix is taken. */
  readonly densityKgM3?: number;
  /** Moisture at ramming; without it that of the chosen mix is taken. */
  readonly moisturePct?: number;
  /** Where the mix comes from, or whether it was tested: the user's words. */
  readonly basis: string;
}

/** `compare-blend`: shares and a cement content to hold the chosen mix against. */
export const compareSchema = z
  .strictObject({
    name: text,
    shares: z
      .record(z.string(), percent("100 %"))
      .refine(
        (shares) =>
          Math.abs(Object.values(shares).reduce((sum, share) => sum + share, 0) - 100) <= 0.05,
        {
          message: render(say`The shares do not sum to 100 %.`),
          params: { expected: say`shares that sum to 100 %` },
        },
      ),
    cement: percent("10 %", 50),
    density: density("1850 kg/m3").optional(),
    moisture: percent("11 %", 60).optional(),
    basis: text,
  })
  .transform(
    (entry): CompareConfig => ({
      ...{ name: entry.name, sharesPct: entry.shares, cementPct: entry.cement },
      ...(entry.density === undefined ? {} : { densityKgM3: entry.density }),
      ...(entry.moisture === undefined ? {} : { moisturePct: entry.moisture }),
      basis: entry.basis,
    }),
  );
