import { z } from "zod";
import { metres, percent, text } from "./schemaFields.js";

const opening = z
  .strictObject({
    width: metres("1.2 m"),
    height: metres("1.0 m"),
    count: z.int().min(1).max(1000).default(1),
  })
  .transform((entry) => ({ widthM: entry.width, heightM: entry.height, count: entry.count }));

/** `element`: what is to be built. */
export const elementSchema = z
  .strictObject({
    name: text,
    length: metres("6.4 m"),
    height: metres("2.7 m"),
    thickness: metres("400 mm"),
    openings: z.array(opening).default([]),
    "compacted-lift": metres("100 mm"),
    waste: percent("5 %", 50),
  })
  .transform((entry) => ({
    name: entry.name,
    lengthM: entry.length,
    heightM: entry.height,
    thicknessM: entry.thickness,
    openings: entry.openings,
    compactedLiftM: entry["compacted-lift"],
    wastePct: entry.waste,
  }));
