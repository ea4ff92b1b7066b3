import { existsSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it, onTestFinished } from "vitest";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const require = createRequire(import.meta.url);

/** The part of the compiler's interface that is used; the notebook kernel brings this old version itself. */
interface OldCompiler {
  readonly version: string;
  readonly ScriptTarget: { readonly ES2020: number };
  readonly ModuleKind: { readonly CommonJS: number };
  readonly ModuleResolutionKind: { readonly Node10: number };
  createProgram(files: string[], options: object): object;
  getPreEmitDiagnostics(program: object): { readonly messageText: unknown }[];
  flattenDiagnosticMessageText(text: unknown, newLine: string): string;
}

// A notebook cell is compiled by TypeScript 5.0 with the old module resolution.
it("the public declarations are understood by the notebook kernel's TypeScript", () => {
  const typescript = require("@tslab/typescript-for-tslab") as OldCompiler;
  expect(typescript.version).toMatch(/^5\.0\./);
  expect(existsSync(join(ROOT, "dist", "index.d.ts"))).toBe(true);
  const folder = mkdtempSync(join(tmpdir(), "loambook-types-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  symlinkSync(join(ROOT, "node_modules"), join(folder, "node_modules"));
  const cell = join(folder, "cell.ts");
  const diagnose = (code: string) => {
    writeFileSync(cell, code);
    const program = typescript.createProgram([cell], {
      strict: true,
      noEmit: true,
      target: typescript.ScriptTarget.ES2020,
      module: typescript.ModuleKind.CommonJS,
      moduleResolution: typescript.ModuleResolutionKind.Node10,
      types: [],
      preserveSymlinks: true,
    });
    return typescript
      .getPreEmitDiagnostics(program)
      .map(({ messageText }) => typescript.flattenDiagnosticMessageText(messageText, "\n"));
  };
  const room = `import { parseSieve } from "loambook/quantities";\nparseSieve("No. 4");\n`;
  expect(diagnose(room)).toEqual([]);
  expect(diagnose(room.replace("quantities", "quantity"))).toHaveLength(1);
  const good = `import { parseSieve } from "loambook";\nconst size: number | undefined = parseSieve("No. 4");\nexport { size };\n`;
  expect(diagnose(good)).toEqual([]);
  // The types are really seen: a wrong use is refused.
  expect(diagnose(good.replace("number | undefined", "string"))).toEqual([
    expect.stringContaining("not assignable to type 'string'"),
  ]);
}, 60_000);
