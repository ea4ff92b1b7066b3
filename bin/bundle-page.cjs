"use strict";
// Makes the program of the mix page one script, so that “loambook page” needs no bundler.
const { mkdirSync, writeFileSync } = require("node:fs");
const { join } = require("node:path");

const root = join(__dirname, "..");

/** Functions of the engine, and those that stand in for them: bit for bit those of Node.js 20. */
const ENGINE_FREE = {
  "Math.exp": "@stdlib/math-base-special-exp",
  "Math.expm1": "@stdlib/math-base-special-expm1",
  "Math.log": "@stdlib/math-base-special-ln",
  "Math.log1p": "@stdlib/math-base-special-log1p",
  "Math.sin": "@stdlib/math-base-special-sin",
  "Math.cos": "@stdlib/math-base-special-cos",
  "Math.log10": join(root, "src", "page", "view", "log10.ts"),
};

/** A library asks by `eval` whether there are generators; the page evaluates no text, and all its browsers have them. */
const NO_EVAL = {
  name: "no-eval",
  load: (id) =>
    /assert-has-generator-support.lib.main\.js$/.test(id)
      ? "module.exports = () => true;"
      : undefined,
};

async function bundle() {
  const { rolldown } = await import("rolldown");
  const build = await rolldown({
    input: join(root, "src", "page", "view", "page.ts"),
    platform: "browser",
    plugins: [NO_EVAL],
    resolve: {
      extensionAlias: { ".js": [".ts", ".js"] },
      // The CSV parser has a build of its own for browsers, which brings its bytes along.
      alias: { "csv-parse/sync": "csv-parse/browser/esm/sync" },
    },
    // Last bits of these differ from engine to engine; the page is to give the digits of the command line.
    transform: { inject: ENGINE_FREE },
    onLog(level, log) {
      // What is left open in a bundle would be asked of a network.
      if (["UNRESOLVED_IMPORT", "EVAL"].includes(log.code)) throw new Error(log.message);
      if (level === "warn") console.warn(log.message);
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
