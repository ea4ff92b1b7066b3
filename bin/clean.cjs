"use strict";
// Old output must not outlive its source: a deleted file would still be imported.
require("node:fs").rmSync(require("node:path").join(__dirname, "..", "dist"), {
  recursive: true,
  force: true,
});
