import { createRequire } from "node:module";

const { name, version } = createRequire(import.meta.url)("../../package.json") as {
  name: string;
  version: string;
};

/** Name and version of this package, printed in every result and report. */
export const MADE_WITH = `${name} ${version}`;
