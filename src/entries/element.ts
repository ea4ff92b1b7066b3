import { z } from "zod";
import type { EarthElement } from "../batch/element.js";
import { say } from "../words/message.js";
import { render } from "../words/render.js";
import { metres, percent, text, writtenAs } from "./writtenValue.js";

/** What is to be rammed, with the name that the study gives it. */
export type ElementConfig = EarthElement & { readonly name: string };

const KINDS = ["wall", "bench", "pier", "ring"];
const opening = z
  .strictObject({
    width: metres("1.2 m"),
    height: metres("1.0 m"),
    count: z.int().min(1).max(1000).default(1),
  })
  .transform((entry) => ({ widthM: entry.width, heightM: entry.height, count: entry.count }));

const rammed = {
  name: text,
  height: metres("2.7 m"),
  "compacted-lift": metres("100 mm"),
  waste: percent("5 %", 50),
};
const walled = { ...rammed, thickness: metres("400 mm"), openings: z.array(opening).default([]) };
const count = z.int().min(1).max(1000).default(1);
const forms = z.discriminatedUnion("kind", [
  z.strictObject({ ...walled, kind: z.literal("wall"), length: metres("6.4 m") }),
  z.strictObject({ ...walled, kind: z.literal("bench"), length: metres("1.8 m") }),
  z.strictObject({
    ...{ ...rammed, kind: z.literal("pier"), count },
    ...{ width: metres("600 mm"), depth: metres("400 mm") },
  }),
  z.strictObject({
    ...{ ...rammed, kind: z.literal("round pier"), count },
    diameter: metres("600 mm"),
  }),
  z.strictObject({
    ...{ ...walled, kind: z.literal("ring") },
    ...{ length: metres("6 m"), width: metres("4 m") },
  }),
  z.strictObject({ ...walled, kind: z.literal("round ring"), diameter: metres("5 m") }),
]);

/** The forms as somebody writes them: a wall needs no kind, and round is said by the diameter. */
const written = z.union(
  forms.options.map((form) => {
    const kind = z.literal(form.shape.kind.value.replace("round ", ""));
    return form.extend({ kind: kind.value === "wall" ? kind.default("wall") : kind });
  }),
);

function elementOf(entry: z.output<typeof forms>): ElementConfig {
  const shared = {
    name: entry.name,
    heightM: entry.height,
    compactedLiftM: entry["compacted-lift"],
    wastePct: entry.waste,
  };
  switch (entry.kind) {
    case "pier": {
      const section = { shape: "rectangle", widthM: entry.width, depthM: entry.depth } as const;
      return { ...shared, kind: "pier", section, count: entry.count };
    }
    case "round pier": {
      const section = { shape: "round", diameterM: entry.diameter } as const;
      return { ...shared, kind: "pier", section, count: entry.count };
    }
    case "ring": {
      const plan = { shape: "rectangle", lengthM: entry.length, widthM: entry.width } as const;
      return {
        ...{ ...shared, kind: "ring", plan },
        ...{ thicknessM: entry.thickness, openings: entry.openings },
      };
    }
    case "round ring": {
      const plan = { shape: "round", diameterM: entry.diameter } as const;
      return {
        ...{ ...shared, kind: "ring", plan },
        ...{ thicknessM: entry.thickness, openings: entry.openings },
      };
    }
    default:
      return {
        ...{ ...shared, kind: entry.kind, lengthM: entry.length },
        ...{ thicknessM: entry.thickness, openings: entry.openings },
      };
  }
}

function keysOf(kind: string): string[] {
  const form = forms.options.find(({ shape }) => shape.kind.value === kind);
  return Object.keys(form?.shape ?? {});
}

/** Of any kind. */
const KEYS = new Set(forms.options.flatMap(({ shape }) => Object.keys(shape)));

const field = z
  .unknown()
  .transform((entry, context) => {
    if (typeof entry !== "object" || entry === null || Array.isArray(entry)) return entry;
    const kind = "kind" in entry ? entry.kind : "wall";
    if (typeof kind !== "string" || !KINDS.includes(kind)) {
      context.addIssue({
        code: "custom",
        path: ["kind"],
        message: render(say`This kind of element is not known.`),
        params: { expected: say`one of ${KINDS.join(", ")}`, value: String(kind) },
      });
      return z.NEVER;
    }
    const round = "diameter" in entry && (kind === "pier" || kind === "ring");
    const named = round ? `round ${kind}` : kind;
    const keys = keysOf(named);
    for (const [key, value] of Object.entries(entry)) {
      // A key of no kind at all is refused as unknown further down.
      if (keys.includes(key) || !KEYS.has(key)) continue;
      context.addIssue({
        code: "custom",
        path: [key],
        message: render(say`This key does not belong to this kind of element.`),
        params: { expected: say`for this kind: ${keys.join(", ")}`, value },
      });
    }
    return { ...entry, kind: named };
  })
  .pipe(forms)
  .transform(elementOf);

/**
 * `element`: what is to be built. Without a kind it is a wall; a diameter makes a pier or a ring round.
 */
export const elementSchema = field.register(writtenAs, { schema: written });
