import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { FIELD_TESTS } from "../../src/batch/fieldTests.js";
import { readGrid } from "../../src/lab/sheet/grid.js";
import { render, renderAll } from "../../src/words/render.js";
import {
  classCurveChart,
  classFindings,
  classJarsTable,
  classJarTable,
  classRecommendationsTable,
  classSievingTable,
} from "../../src/workshop/classBlocks.js";
import { classRows, classRowsTable } from "../../src/workshop/classRows.js";
import { readClassSheet } from "../../src/workshop/classSheet.js";
import { lessonExercises, openLesson } from "../../src/workshop/lesson.js";
import { classDay } from "../../src/workshop/openClass.js";
import { classForms } from "../../src/workshop/papers.js";
import { checkAnswer } from "../../src/workshop/session.js";
import { openExample } from "../support/exampleResult.js";
import { ROOT } from "../support/runCli.js";

const CLASS = join(ROOT, "data-examples", "class-day");
const SHIPPED = readFileSync(join(CLASS, "class.csv"), "utf8");

async function read(text: string) {
  const { grid, findings } = await readGrid("class.csv", Buffer.from(text));
  if (grid === undefined) throw new Error(findings.map(({ message }) => render(message)).join());
  return readClassSheet(grid);
}

const study = openExample("class-day");
const classOf = async (text: string, group: string | number = 1) =>
  classDay(await study, await read(text), { group });
const codes = ({ findings }: { readonly findings: readonly { readonly code: string }[] }) =>
  findings.map(({ code }) => code);

/** The shipped sheet with one reading changed. */
const change = (row: string, values: string) =>
  SHIPPED.replace(new RegExp(`^(${row.replace(/[()]/g, "\\$&")}),.*$`, "m"), `$1,${values}`);

describe("the sheet of a class", () => {
  it("holds four groups, each worked out from its own readings", async () => {
    const { groups, findings } = await classOf(SHIPPED);
    expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(groups.map(({ name }) => name)).toEqual(["group 1", "group 2", "group 3", "group 4"]);
    const passing = [
      1 - 876.3 / 1200,
      1 - (98.3 + 117.6 + 128.4 + 215.1 + 166.9 + 133.7) / 1185.4,
      1 - (118.9 + 125.3 + 129.7 + 219.2 + 165.8 + 130.6) / 1210.2,
      1 - (104.2 + 118 + 133.6 + 216.9 + 168.8 + 131.9) / 1194,
    ];
    for (const [index, { soil }] of groups.entries()) {
      expect(soil?.sieve.points[0].passingPct).toBeCloseTo(100 * passing[index], 9);
      expect(soil?.washed).toBe(true);
    }
    const shares = groups.map(({ soil }) =>
      soil?.jar?.shares.map(({ heightSharePct }) => Math.round(heightSharePct)),
    );
    expect(shares).toEqual([
      [59, 22, 19],
      [60, 19, 21],
      [56, 26, 19],
      [63, 19, 18],
    ]);
  });

  it("reads decimal commas, semicolons and Spanish labels as the same numbers", async () => {
    const spanish = readFileSync(join(CLASS, "class.es.csv"), "utf8");
    const [own, other] = await Promise.all([read(SHIPPED), read(spanish)]);
    expect(other.findings).toEqual([]);
    expect(other.groups.map(({ name }) => name)).toEqual([
      "grupo 1",
      "grupo 2",
      "grupo 3",
      "grupo 4",
    ]);
    const numbers = (sheet: typeof own) =>
      sheet.groups.map(({ sieve, jar }) => [
        sieve?.dryMassG,
        sieve?.washedDryMassG,
        sieve?.panG,
        sieve?.rows.map(({ sizeMm, retainedG }) => [sizeMm, retainedG]),
        jar?.waterDepthMm,
        jar?.layers.map(({ topMm, timeMin }) => [topMm, timeMin]),
      ]);
    expect(numbers(other)).toEqual(numbers(own));
  });

  it("turns other units into ours, also where they stand with decimal commas", async () => {
    const text =
      "lectura;a\nmasa seca antes del lavado (kg);1,25\nen 2 mm (g);800,5\nfondo (lb);0,99";
    const [{ sieve }] = (await read(text)).groups;
    expect(sieve?.dryMassG).toBeCloseTo(1250, 9);
    expect(sieve?.rows[0].retainedG).toBe(800.5);
    expect(sieve?.panG).toBeCloseTo(0.99 * 453.59237, 9);
  });

  it("takes a jar as read when the printed sheets say, where the class says nothing else", async () => {
    const { groups } = await read(SHIPPED);
    const minutes = groups[0].jar?.layers.map(({ timeMin }) => timeMin);
    expect(minutes).toEqual([1, 45, 24 * 60]);
    // the form of the field test: 1 minute, 30 to 60 minutes, 24 hours
    const jar = FIELD_TESTS.find(({ id }) => id === "jar")!;
    const steps = jar.steps.map((step) => render(step)).join(" ");
    const [first, from, to, hours] = (
      /after (\d+) minute, (\d+) to (\d+) minutes, (\d+) hours/.exec(steps) ?? []
    )
      .slice(1)
      .map(Number);
    expect([first, 60 * hours]).toEqual([1, 1440]);
    expect(45).toBeGreaterThanOrEqual(from);
    expect(45).toBeLessThanOrEqual(to);
    const form = renderAll(classForms(await classOf(SHIPPED)).parts);
    expect(JSON.stringify(form)).toContain("after 1 minute, 45 minutes and 24 hours");
    const later = await read(
      SHIPPED.replace("dry mass before", "jar: silt read after (h),16,16,16,16\ndry mass before"),
    );
    expect(later.groups[0].jar?.layers[1].timeMin).toBe(960);
  });

  it("answers jar layers in the wrong order in plain words, with the file and row that exist", async () => {
    const day = await classOf(change("jar: top of silt (mm)", "49,72,70,69"));
    const [found] = day.findings.filter(({ severity }) => severity === "error");
    expect([found.file, found.row, found.column, found.value]).toEqual([
      "class.csv",
      7,
      "group 1",
      "49",
    ]);
    expect(SHIPPED.split("\n")[6]).toContain("jar: top of silt");
    expect(render(found.message)).toBe("The settled soil stands lower than at the reading before.");
    const opened = openLesson(day, "grading");
    expect(opened.kind).toBe("findings");
    expect(render(checkAnswer("passing-finest", 27).text)).toContain("Run the cells above first");
    // every cell of the notebook says what is the matter, and none throws
    for (const shown of [
      classJarTable,
      classSievingTable,
      classCurveChart,
      classRecommendationsTable,
    ]) {
      const block = shown(day);
      expect(block.kind).toBe("note");
    }
    expect(classJarsTable(day).kind).toBe("table");
    expect(classFindings(day).findings.length).toBeGreaterThan(0);
    // the other groups go on
    expect(codes(await classOf(change("jar: top of silt (mm)", "49,72,70,69"), 2))).not.toContain(
      "layer-sinks",
    );
  });

  it("says of a sample that was not washed what it is", async () => {
    // 315 g are gone that nobody accounts for: a loss, unless the masses are those of a dry sieving
    const day = await classOf(change("dry mass after washing (g)", ",868.9,896.6,880.5"));
    expect(codes(day)).toContain("sieve-loss");
    expect(openLesson(day, "grading").kind).toBe("findings");
    const dry = SHIPPED.replace(
      /^dry mass after washing.*$/m,
      "dry mass after washing (g),,,,",
    ).replace(/^pan .*$/m, "pan (g),318.9,336.0,314.5,316.5");
    const unwashed = await classOf(dry);
    expect(unwashed.group?.soil?.washed).toBe(false);
    // the laboratory's fines are not joined to it
    expect(unwashed.group?.soil?.curve.points.every(({ origin }) => origin === "sieve")).toBe(true);
    const { core } = lessonExercises(unwashed, "grading");
    const finest = core.find(({ id }) => id === "passing-finest");
    expect(render(finest?.why ?? "")).toContain("The sample was not washed");
    expect(core.map(({ id }) => id)).toContain("d60-of-the-soil");
  });

  it("takes other sieves, by opening or by designation, and sieves that a group left out", async () => {
    const us = [
      "reading,red,blue",
      "dry mass before washing (lb),2.5,2.5",
      "dry mass after washing (lb),2.0,2.0",
      "on 3/8 in (lb),0.5,0.5",
      "on No. 4 (lb),0.5,",
      "on No. 40 (lb),0.5,1.0",
      "on No. 200 (lb),0.49,0.49",
      "pan (lb),0.01,0.01",
    ].join("\n");
    const { groups, findings } = await read(us);
    expect(findings).toEqual([]);
    const [red, blue] = groups;
    expect(red.sieve?.rows.map(({ sizeMm }) => sizeMm)).toEqual([9.5, 4.75, 0.425, 0.075]);
    expect(red.sieve?.dryMassG).toBeCloseTo(2.5 * 453.59237, 6);
    expect(blue.sieve?.rows.map(({ sizeMm }) => sizeMm)).toEqual([9.5, 0.425, 0.075]);
    expect(codes(blue)).toContain("sieve-not-used");
    expect(blue.findings.find(({ code }) => code === "sieve-not-used")?.row).toBe(5);
    expect(red.jar).toBeUndefined();
    const day = await classOf(us, "red");
    const ids = lessonExercises(day, "grading").core.map(({ id }) => id);
    expect(ids).not.toContain("jar-sand-share");
    expect(ids).toContain("passing-finest");
  });

  it("tells an unknown row, a group that is not there, an unknown unit, a sheet that names nobody", async () => {
    expect(codes(await classOf(SHIPPED.replace("pan (g)", "pfanne (g)")))).toContain(
      "unknown-class-row",
    );
    const nobody = await classOf(SHIPPED, "group 9");
    expect(codes(nobody)).toContain("no-such-group");
    expect(openLesson(nobody, "grading").kind).toBe("findings");
    expect(codes(await classOf(SHIPPED.replace("pan (g)", "pan (oak)")))).toContain("unknown-unit");
    expect(codes(await classOf("reading\npan (g)\n"))).toContain("no-groups");
    for (const garbage of ["x", "-5", "1e999", "=SUM(A1)", "59,1,2"]) {
      const day = await classOf(
        SHIPPED.replace(/^on 2 mm.*$/m, `on 2 mm (g),"${garbage}",128.4,129.7,133.6`),
      );
      const opened = openLesson(day, "grading");
      expect(opened.kind, garbage).toBe("findings");
    }
  });

  it("goes into rows that a frame can hold, and comes back as a table", async () => {
    const rows = classRows(await classOf(SHIPPED));
    expect(rows.map(({ group, washed }) => [group, washed])).toEqual(
      [1, 2, 3, 4].map((n) => [`group ${n}`, "yes"]),
    );
    const fine = rows.filter(({ finesPct }) => Number(finesPct) > 27);
    expect(renderAll(classRowsTable(fine).rows)).toEqual([["group 2", "60", "21", "27.5", "0.97"]]);
  });
});
