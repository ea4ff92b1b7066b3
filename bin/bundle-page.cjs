"use strict";
// Makes the program of the mix page one script, so that “loambook page” needs no bundler.
const { mkdirSync, writeFileSync } = require("node:fs");
const { join } = require("node:path");

const root = join(__dirname, "..");

async function bundle() {
  const { rolldown } = await import("rolldown");
  const build = await rolldown({
    input: join(root, "src", "page", "view", "page.ts"),
    platform: "browser",
    resolve: {
      extensionAlias: { ".js": [".ts", ".js"] },
      // The CSV parser has a build of its own for browsers, which brings its bytes along.
      alias: { "csv-parse/sync": "csv-parse/browser/esm/sync" },
    },
    onLog(level, log) {
      // What is left open in a bundle would be asked of a network.
      if (log.code === "UNRESOLVED_IMPORT") throw new Error(log.message);
      if (level === "warn" && log.code !== "EVAL") console.warn(log.message);
    },
  });
  const { output } = await build.generate({ format: "iife", minify: true, codeSplitting: false });
  const [{ code }] = output;
  // Inside HTML a script ends at the first such mark, also within a text.
  const safe = code.replaceAll("</script", "<\\/script").replaceAll("<!--", "<\\!--");
  mkdirSync(join(root, "dist", "page"), { recursive: true });
  writeFileSync(join(root, "dist", "page", "page.js.txt"), safe);
}

bundle().catch((problem) => {
  console.error(problem);
  process.exitCode = 1;
});
