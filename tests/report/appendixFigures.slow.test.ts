import { expect, it } from "vitest";
import { ANNEX_KEYS } from "../../src/entries/report.js";
import {
  type AppendixSectionKey,
  permitAppendix,
} from "../../src/report/appendix/permitAppendix.js";
import { APPENDIX_SECTIONS } from "../../src/study/review.js";
import { renderAll } from "../../src/words/render.js";
import { openExample } from "../support/exampleResult.js";
import { textFaults } from "../support/textFaults.js";

const SECTION_KEYS = APPENDIX_SECTIONS.map(({ key }) => key).filter(
  (key) => !(ANNEX_KEYS as readonly string[]).includes(key),
) as AppendixSectionKey[];

it.each(["reading-room", "bus-shelter"])(
  "the figures of the appendix of %s have texts that keep clear of each other, in both languages",
  async (name) => {
    const result = await openExample(name);
    const parts = [
      ...SECTION_KEYS.flatMap((key) => permitAppendix(result).section(key)),
      ...permitAppendix(result, "all").annexes(),
    ];
    const faults: string[] = [];
    for (const part of parts) {
      if (part.kind !== "figure") continue;
      for (const locale of ["en", "es"] as const) {
        for (const fault of await textFaults(renderAll(part, locale))) {
          faults.push(`${part.key} ${locale}: ${fault}`);
        }
      }
    }
    expect(faults).toEqual([]);
    expect(parts.filter(({ kind }) => kind === "figure").length).toBeGreaterThan(5);
  },
);
