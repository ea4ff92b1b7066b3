import { join } from "node:path";
import { expect, it } from "vitest";
import { computeMaterial, gradedOnce } from "../../src/study/material.js";
import { readStudy } from "../../src/study/readStudy.js";
import { EXAMPLES } from "../support/studyCopy.js";

it("works a material out anew for all that its grading rests on, and for nothing else", async () => {
  const { study } = await readStudy(join(EXAMPLES, "reading-room"));
  const { config, materials } = study!;
  const soil = materials[0];
  const grade = gradedOnce(32);
  const first = grade(soil, config);
  expect(first).toEqual(computeMaterial(soil, config));

  const { sieve } = soil;
  const heavier = { ...sieve, panG: sieve.panG! + 5 };
  const denser = { ...soil.config, particleDensityKgM3: 2700 };
  const versions: Parameters<typeof computeMaterial>[] = [
    [{ ...soil, sieve: heavier }, config],
    [{ ...soil, limits: undefined }, config],
    [{ ...soil, hydrometer: undefined }, config],
    [{ ...soil, config: denser }, config],
    [{ ...soil, config: { ...soil.config, name: "Another" } }, config],
    [soil, { ...config, seed: config.seed + 1 }],
    [soil, { ...config, readingErrors: { ...config.readingErrors, balanceG: 7 } }],
    [soil, { ...config, units: "US" }],
    [soil, { ...config, sizeReading: "size" }],
  ];
  const found = versions.map(([material, entries]) => grade(material, entries));
  expect(new Set([first, ...found]).size).toBe(versions.length + 1);
  expect(found.at(-1)).toEqual(computeMaterial(...versions.at(-1)!));

  const dearer = { ...soil.config, price: undefined, lossPct: 7 };
  const retitled = { ...config, title: "Another" };
  expect(grade({ ...soil, config: dearer }, retitled)).toBe(first);
});

it("keeps those that were asked for last", async () => {
  const { study } = await readStudy(join(EXAMPLES, "reading-room"));
  const { config, materials } = study!;
  const [soil, pit, river] = materials.map((material) => () => grade(material, config));
  const grade = gradedOnce(2);
  const [first, second] = [soil(), pit()];
  expect(soil()).toBe(first);
  // The pit sand is now the one that nobody asked for longest.
  river();
  expect(soil()).toBe(first);
  expect(pit()).not.toBe(second);
});
