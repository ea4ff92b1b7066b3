import { describe, expect, it } from "vitest";
import { checkGuidance } from "../../src/guidance/check.js";
import type { GuidanceEntry } from "../../src/guidance/entry.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { curveOf } from "../grading/gradingCases.js";

const range = (low?: number, high?: number) => `${low ?? ""}–${high ?? ""}`;

/** All numbers of an entry, in one line. */
function numbersOf(entry: GuidanceEntry): string {
  const { boundariesMm: ends, points, fractions, consistency, others = [], classes } = entry;
  const { ofPassingMm } = entry;
  return [
    `${ends.clay}/${ends.silt}/${ends.sand}`,
    ...(ofPassingMm === undefined ? [] : [`of <${ofPassingMm}`]),
    ...points.map(({ sizeMm, lowPct, highPct }) => {
      return `@${sizeMm} ${range(Number(lowPct.toFixed(1)), Number(highPct.toFixed(1)))}`;
    }),
    ...fractions.map(({ fraction, minPct, maxPct }) => `${fraction} ${range(minPct, maxPct)}`),
    ...consistency.map(({ quantity, minPct, maxPct, below }) => {
      return `${quantity} ${range(minPct, maxPct)}${below ? " below" : ""}`;
    }),
    ...others.map(({ quantity, min, max }) => `${quantity} ${range(min, max)}`),
    ...(classes
      ? [
          `LS ${classes.favourableBelow.linearShrinkagePct}/${classes.unfavourableAbove.linearShrinkagePct}`,
          `PI ${classes.favourableBelow.plasticityIndexPct}/${classes.unfavourableAbove.plasticityIndexPct}`,
          `sand ${classes.sand.limitPct} ${classes.sand.below}/${classes.sand.fromThere}`,
        ]
      : []),
  ].join("; ");
}

/**
 * Copied by hand from the record of what was read and what is from memory; derived points and the passing
 * of power curves worked out apart from the code.
 */
const RECORDED: Readonly<Record<string, string>> = {
  "darchitectures-pise":
    "0.002/0.02/2; @0.002 5–20; @0.02 30–50; clay 5–20; silt 15–30; sandAndGravel 50–70",
  "morel-clay": "0.002/0.063/2; clay 5–15",
  "burroughs-2001": "0.002/0.075/2.36; LS 7.1/13; PI 16/30; sand 60 satisfactory/not classified",
  "burroughs-2001-values":
    "0.002/0.075/2.36; @0.075 21–35; sand 30–60; liquidLimitPct –36; plasticityIndexPct –16 below; linearShrinkagePct –7.1 below; plasticLimitPct 16–19",
  "burroughs-2008": "0.002/0.063/2; LS 6/11; PI 15/30; sand 64 favourable/unfavourable",
  "rew-practitioner": "0.002/0.075/4.75; @0.075 8–25",
  "berge-pise": "0.002/0.063/2; clay 0–30",
  "easton-terrawiki": "0.002/0.063/2; @0.063 5–30; fines 5–30; sandAndGravel 70–95",
  "hall-djerbib-2004": "0.002/0.063/2; dryDensityKgM3 1800–2200",
  "usace-road-base":
    "0.002/0.075/4.75; @0.075 5–15; @0.425 15–30; @2 20–50; @4.75 35–65; @9.5 50–80; @19 70–100; @25 100–100; liquidLimitPct –28; plasticityIndexPct –6",
  "fdot-sand-clay":
    "0.005/0.05/2; of <2; @0.005 8–21; @0.05 8–25; silt 0–10; liquidLimitPct –25; plasticityIndexPct –6; topSizeMm –25",
  "power-19mm":
    "0.002/0.075/4.75; @0.075 6.3–16.1; @0.15 8.9–20.2; @0.3 12.6–25.4; @0.6 17.8–32; @1.18 24.9–40; @2.36 35.2–50.2; @4.75 50–63.3; @9.5 70.7–79.6; @12.5 81.1–87.1; @19 100–100",
  "walker-2005":
    "0.002/0.063/2; @0.002 5–20; @0.063 20–50; clay 5–20; silt 10–30; sandAndGravel 45–80; plasticityIndexPct 2–30; liquidLimitPct –45 below; linearShrinkagePct –5; organicPct –2; saltsPct –2; dryDensityKgM3 1700–2200",
  "keable-sazs-ars":
    "0.002/0.063/2; @0.002 5–15; @0.063 30–45; clay 5–15; silt 15–30; sandAndGravel 50–70",
  hb195:
    "0.002/0.063/2; @0.002 0–20; @0.063 25–50; clay 0–20; silt 10–30; sandAndGravel 45–75; linearShrinkagePct –2.5",
  "craterre-pise":
    "0.002/0.06/2; @0.002 15–25; @0.06 35–60; @2 85–100; clay 15–25; silt 20–35; sand 40–50; gravel 0–15",
  "aci-230":
    "0.002/0.075/4.75; @0.075 5–35; @4.75 55–100; @50 100–100; plasticityIndexPct –8; organicPct –2",
  "maniatidis-walker-2003": "0.002/0.063/2; @0.063 20–35; fines 20–35; sand 50–75",
  "nmac-re-soil": "0.002/0.063/2; topSizeMm –38.1; saltsPct –2",
  "lehmbau-regeln": "0.002/0.063/2; dryDensityKgM3 1700–2400; sulphatePct –0.1; saltsPct –0.12",
  "is-2110": "0.002/0.063/2; sand 35–100; liquidLimitPct –27; plasticityIndexPct 8.5–10.5",
  "kerali-blocks": "0.002/0.06/2; clay 10–35; linearShrinkagePct 2.5–9",
  "craterre-blocks":
    "0.002/0.06/2; @0.002 8–30; @0.06 18–55; @2 60–100; clay 8–30; silt 10–25; sand 25–80; gravel 0–40; plasticityIndexPct 2.5–29; liquidLimitPct 25–51",
  "is-1725":
    "0.002/0.06/2; @0.002 5–18; @0.06 20–50; clay 5–18; silt 10–40; sand 50–80; plasticityIndexPct –12",
};

/** How each is known, by hand from the same record: `basis` and, of what is from memory, how firmly. */
const KNOWN_BY: Readonly<Record<string, string>> = {
  "darchitectures-pise": "read",
  "morel-clay": "read",
  "burroughs-2001": "read",
  "burroughs-2001-values": "read",
  "burroughs-2008": "abstract",
  "rew-practitioner": "read",
  "berge-pise": "read",
  "easton-terrawiki": "cited",
  "hall-djerbib-2004": "abstract",
  "usace-road-base": "cited",
  "fdot-sand-clay": "cited",
  "power-19mm": "cited",
  "walker-2005": "memory medium-high",
  "keable-sazs-ars": "memory medium",
  hb195: "memory medium",
  "craterre-pise": "memory medium",
  "aci-230": "memory medium",
  "maniatidis-walker-2003": "memory medium-high",
  "nmac-re-soil": "memory medium",
  "lehmbau-regeln": "memory medium",
  "is-2110": "memory low",
  "kerali-blocks": "cited",
  "craterre-blocks": "memory medium",
  // The record has medium to low.
  "is-1725": "memory low",
};

/** Where each was seen, by hand from the same record: as a reader cites it, and the host of the copy read. */
const SEEN_AT: Readonly<Record<string, string>> = {
  "darchitectures-pise": "d’Architectures @ darchitectures.com",
  "morel-clay": "Morel @ fr.scribd.com",
  "burroughs-2001": "Burroughs 2001 @ doi.org",
  "burroughs-2001-values": "Burroughs 2001 @ doi.org",
  "burroughs-2008": "Burroughs 2008 @ trid.trb.org",
  "rew-practitioner": "Rammed Earth Works blog 2010 @ www.rammedearthworks.com",
  "berge-pise": "Ecology Center @ www.ecologycenter.us",
  "easton-terrawiki": "Easton 2007 @ terrawiki.es",
  "hall-djerbib-2004": "Hall 2004 @ fr.scribd.com",
  "usace-road-base": "US Army Corps of Engineers 2000 @ doi.org",
  "fdot-sand-clay": "Florida DOT @ azrefs.org",
  "power-19mm": "Austroads 1998 @ doi.org",
  "walker-2005": "Walker 2005",
  "keable-sazs-ars": "Keable 2001",
  hb195: "Walker 2002",
  "craterre-pise": "Doat 1979",
  "aci-230": "ACI Committee 230 2009",
  "maniatidis-walker-2003": "Maniatidis 2003",
  "nmac-re-soil": "New Mexico Construction Industries Division",
  "lehmbau-regeln": "Dachverband Lehm 2009",
  "is-2110": "Bureau of Indian Standards 1980",
  "kerali-blocks": "thesis excerpt @ 1library.net",
  "craterre-blocks": "CRATerre-EAG 1998",
  "is-1725": "Bureau of Indian Standards 1982",
};

describe("the published numbers", () => {
  it("name the work and the copy that was read", () => {
    const found = GUIDANCE_ENTRIES.map((entry) => {
      const { authors, year, address } = entry.source;
      const [author] = authors.split(/[,;(]/);
      const work = [author.trim(), ...(year === undefined ? [] : [year])].join(" ");
      return [entry.id, address ? `${work} @ ${new URL(address).host}` : work];
    });
    expect(Object.fromEntries(found)).toEqual(SEEN_AT);
  });

  it("are those of the record, entry by entry", () => {
    const found = Object.fromEntries(GUIDANCE_ENTRIES.map((entry) => [entry.id, numbersOf(entry)]));
    expect(found).toEqual(RECORDED);
  });

  it("are called read only where they were", () => {
    const found = GUIDANCE_ENTRIES.map(({ id, basis, confidence }) => {
      return [id, basis === "memory" ? `memory ${confidence}` : basis];
    });
    expect(Object.fromEntries(found)).toEqual(KNOWN_BY);
    const derived = GUIDANCE_ENTRIES.filter((each) => each.derived).map(({ id }) => id);
    expect(derived).toEqual([
      "darchitectures-pise",
      "easton-terrawiki",
      "walker-2005",
      "keable-sazs-ars",
      "hb195",
      "craterre-pise",
      "maniatidis-walker-2003",
      "craterre-blocks",
      "is-1725",
    ]);
  });

  it("count a value exactly on a limit as inside, and a hair beyond it as outside", () => {
    const curve = curveOf([0.0001, 0], [100, 100]);
    const hair = 1e-6;
    const wrong = GUIDANCE_ENTRIES.flatMap((entry) => {
      const verdict = (quantity: string, value: number) => {
        const { criteria, others = [] } = checkGuidance(curve, entry, { [quantity]: value });
        return [...criteria, ...others].find((each) => each.quantity === quantity)?.verdict;
      };
      const limits = [
        ...entry.consistency.map((each) => ({ ...each, min: each.minPct, max: each.maxPct })),
        ...(entry.others ?? []).filter(({ quantity }) => quantity !== "topSizeMm"),
      ];
      return limits.flatMap((limit) => {
        const { quantity, min = Number.NaN, max = Number.NaN } = limit;
        const top = "below" in limit && limit.below ? "outside" : "inside";
        const expected = [
          [min, "inside"],
          [min - hair, "outside"],
          [max, top],
          [max - hair, "inside"],
          [max + hair, "outside"],
        ] as const;
        return expected
          .filter(([value]) => !Number.isNaN(value))
          .filter(([value, as]) => verdict(quantity, value) !== as)
          .map(([value, as]) => `${entry.id} ${quantity} ${value}: not ${as}`);
      });
    });
    expect(wrong).toEqual([]);
  });

  it("hold a curve that runs along an edge of an envelope for inside, and one beside it for outside", () => {
    const wrong = GUIDANCE_ENTRIES.filter(
      ({ points, ofPassingMm }) => points.length > 0 && ofPassingMm === undefined,
    ).flatMap((entry) => {
      const along = (edge: "lowPct" | "highPct", by: number) => {
        const curve = curveOf(
          ...entry.points.map((at): [number, number] => [at.sizeMm, at[edge] + by]),
        );
        return checkGuidance(curve, entry)
          .criteria.filter(({ kind }) => kind === "passing")
          .map(({ verdict }) => verdict);
      };
      const count = entry.points.length;
      return [
        [along("lowPct", 0), "inside"],
        [along("lowPct", -0.001), "outside"],
        [along("highPct", 0), "inside"],
        [along("highPct", 0.001), "outside"],
      ].filter(([found, as]) => String(found) !== String(Array(count).fill(as)));
    });
    expect(wrong).toEqual([]);
  });
});
