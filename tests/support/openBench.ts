import { join } from "node:path";
import { type OpenStudy, openOnBench } from "../../src/page/tune.js";
import { readStudy } from "../../src/study/readStudy.js";
import { EXAMPLES } from "./studyCopy.js";

const opened = new Map<string, Promise<OpenStudy>>();

/** An example as the page has it, opened once for all tests of a process, which only read it. */
export function openBench(name: string): Promise<OpenStudy> {
  const known = opened.get(name) ?? open(name);
  opened.set(name, known);
  return known;
}

async function open(name: string): Promise<OpenStudy> {
  const { study, findings } = await readStudy(join(EXAMPLES, name));
  if (!study) throw new Error(`${name} cannot be read`);
  const { open } = openOnBench(study, findings);
  if (!open) throw new Error(`${name} cannot be computed`);
  return open;
}
