#!/usr/bin/env node
"use strict";
// Plain old syntax, so that an old Node gets this far and can say what is wrong.
var parts = process.versions.node.split(".").map(Number);
if (parts[0] < 20 || (parts[0] === 20 && parts[1] < 19)) {
  console.error(
    "loambook needs Node.js 20.19 or newer; this is " +
      process.versions.node +
      ". Install a newer one from your system or from nodejs.org.",
  );
  process.exit(1);
}
var fs = require("node:fs");
var path = require("node:path");
var main = path.join(__dirname, "..", "dist", "command", "main.js");
if (!fs.existsSync(main)) {
  console.error(`loambook is not built yet: run “npm run build” in ${path.join(__dirname, "..")}.`);
  process.exit(1);
}
// A command is over in a second or two: machine code that is made meanwhile on other threads takes more of the
// processor's time than it saves. It is made later, of what runs long. Known in these versions alone.
if (parts[0] <= 24) require("node:v8").setFlagsFromString("--interrupt-budget=1000000");
import(require("node:url").pathToFileURL(main).href).then((module) =>
  module.main(process.argv.slice(2)).then((code) => {
    process.exitCode = code;
  }),
);
