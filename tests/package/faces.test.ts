import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const read = (path: string) => readFileSync(join(ROOT, path), "utf8");
const { exports: faces, typesVersions } = JSON.parse(read("package.json"));
const rooms = readdirSync(join(ROOT, "src")).filter((room) =>
  existsSync(join(ROOT, "src", room, "index.ts")),
);

describe("the faces of the package", () => {
  it("are the main one and one for each room, for new and old module resolution", () => {
    const subpaths = Object.keys(faces).filter((name) => !/^\.$|package\.json$/.test(name));
    expect(subpaths.sort()).toEqual(rooms.map((room) => `./${room}`).sort());
    expect(Object.keys(typesVersions["*"]).sort()).toEqual([...rooms].sort());
    for (const room of rooms) {
      expect(typesVersions["*"][room]).toEqual([`dist/${room}/index.d.ts`]);
    }
  });

  it.each(rooms)("%s: every name stands on its API page", async (room) => {
    const names = Object.keys(await import(`../../src/${room}/index.ts`));
    const page = read(`docs/api/${room}.md`);
    // Underscores and the like are escaped on the page.
    const missing = names.filter((name) => !page.replaceAll("\\", "").includes(`### ${name}`));
    expect(missing, "run “npm run api”").toEqual([]);
  });
});
