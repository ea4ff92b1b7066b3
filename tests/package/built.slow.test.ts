import { execFileSync } from "node:child_process";
import {
  createReadStream,
  existsSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { createRequire } from "node:module";
import { basename, join } from "node:path";
import { expect, it } from "vitest";
import type { SurveyRow } from "../../src/soil/survey/surveyRow.js";
import { ROOT, temporaryFolder } from "../support/runCli.js";

const require = createRequire(import.meta.url);

/** The part of the compiler's interface that is used; the notebook kernel brings this old version itself. */
interface OldCompiler {
  readonly version: string;
  readonly ScriptTarget: { readonly ES2020: number };
  readonly ModuleKind: { readonly CommonJS: number };
  readonly ModuleResolutionKind: { readonly Node10: number };
  createProgram(files: string[], options: object): object;
  getPreEmitDiagnostics(program: object): {
    readonly file?: { readonly fileName: string };
    readonly messageText: unknown;
  }[];
  flattenDiagnosticMessageText(text: unknown, newLine: string): string;
}

// A notebook cell is compiled by TypeScript 5.0 with the old module resolution.
it("the public declarations are understood by the notebook kernel's TypeScript", () => {
  const typescript = require("@tslab/typescript-for-tslab") as OldCompiler;
  expect(typescript.version).toMatch(/^5\.0\./);
  expect(existsSync(join(ROOT, "dist", "index.d.ts"))).toBe(true);
  const folder = temporaryFolder();
  symlinkSync(join(ROOT, "node_modules"), join(folder, "node_modules"));
  const room = `import { parseSieve } from "loambook/quantities";\nparseSieve("No. 4");\n`;
  const good = `import { parseSieve } from "loambook";\nconst size: number | undefined = parseSieve("No. 4");\nexport { size };\n`;
  const cells = {
    room,
    noRoom: room.replace("quantities", "quantity"),
    good,
    // The types are really seen: a wrong use is refused.
    wrong: good.replace("number | undefined", "string"),
  };
  const files = Object.entries(cells).map(([name, code]) => {
    const file = join(folder, `${name}.ts`);
    writeFileSync(file, code);
    return file;
  });
  const program = typescript.createProgram(files, {
    strict: true,
    noEmit: true,
    target: typescript.ScriptTarget.ES2020,
    module: typescript.ModuleKind.CommonJS,
    moduleResolution: typescript.ModuleResolutionKind.Node10,
    types: [],
    preserveSymlinks: true,
  });
  const found = typescript
    .getPreEmitDiagnostics(program)
    .map(({ file, messageText }) => [
      file && basename(file.fileName, ".ts"),
      typescript.flattenDiagnosticMessageText(messageText, "\n"),
    ]);
  expect(found).toEqual([
    ["noRoom", expect.stringContaining("loambook/quantity")],
    ["wrong", expect.stringContaining("not assignable to type 'string'")],
  ]);
});

it("every room can be imported from the built package", async () => {
  const rooms = readdirSync(join(ROOT, "src")).filter((room) =>
    existsSync(join(ROOT, "src", room, "index.ts")),
  );
  expect(rooms.length).toBeGreaterThan(10);
  for (const room of rooms) {
    const face = await import(/* @vite-ignore */ `loambook/${room}`);
    expect(Object.keys(face).length, room).toBeGreaterThan(0);
  }
});

// The command line runs from joined files, which must find threads, kernel and documents where they stand.
it("the joined command line gives what the modules give, and finds its files", async () => {
  const loambook = (...words: string[]) =>
    execFileSync(process.execPath, [join(ROOT, "bin", "loambook.cjs"), ...words], {
      encoding: "utf8",
      maxBuffer: 1e8,
    });
  const study = join(ROOT, "data-examples", "bus-shelter");
  const { openStudy } = await import(join(ROOT, "dist", "study", "index.js"));
  const computed = `${JSON.stringify(await openStudy(study), undefined, 2)}\n`;
  expect(loambook("compute", study, "--json") === computed).toBe(true);

  const folder = temporaryFolder();
  loambook("kernel", "--folder", folder);
  const kernel = JSON.parse(readFileSync(join(folder, "kernels/loambook/kernel.json"), "utf8"));
  const program = kernel.argv.find((word: string) => word.endsWith("main.js"));
  expect(program).toBe(join(ROOT, "dist", "notebook", "kernel", "main.js"));

  const gradings = join(folder, "gradings.csv");
  writeFileSync(gradings, "id,2,0.063,0.002\nA,100,40,10\nB,90,30,8\n");
  const rows = join(folder, "rows.csv");
  loambook("survey", gradings, "--out", rows);
  expect(readFileSync(rows, "utf8").split("\n").length).toBeGreaterThan(2);
  expect(JSON.parse(loambook("schema", "result"))).toEqual(
    JSON.parse(readFileSync(join(ROOT, "docs", "result.schema.json"), "utf8")),
  );
});

// Worker threads need compiled files.
it("a survey gives the same rows on two threads, from a file", async () => {
  const built = new URL("../../dist/soil/survey/surveyGradings.js", import.meta.url);
  const { surveyGradings } = (await import(
    built.href
  )) as typeof import("../../src/soil/survey/surveyGradings.js");
  const sizes = [75, 4.75, 2, 0.85, 0.25, 0.075, 0.02, 0.006, 0.002];
  const lines = Array.from({ length: 600 }, (_, index) => {
    const size63 = 0.02 + (index % 37) / 20;
    const exponent = 0.35 + (index % 11) / 25;
    const passing = sizes.map((size) =>
      (-100 * Math.expm1(-((size / size63) ** exponent))).toFixed(3),
    );
    return `G${index},30,12,100,${passing.slice(1).join(",")}`;
  });
  const file = join(temporaryFolder(), "gradings.csv");
  const header = `id,liquid limit (%),plasticity index (%),${sizes.join(",")}`;
  writeFileSync(file, `${header}\n${lines.join("\n")}\n`);
  const run = async (threads: number) => {
    const rows: SurveyRow[] = [];
    for await (const row of surveyGradings(createReadStream(file), { threads })) rows.push(row);
    return rows;
  };
  const rows = await run(2);
  expect(rows).toHaveLength(600);
  expect(rows).toEqual(await run(0));
  // Whoever stops reading early leaves no thread behind.
  for await (const row of surveyGradings(createReadStream(file))) {
    expect(row.id).toBe("G0");
    break;
  }
});
