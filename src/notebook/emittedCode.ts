import { setTimeout as wait } from "node:timers/promises";
import type { KernelClient } from "./kernelClient.js";
import { joinText } from "./nbformat.js";

/** tslab answers `abort` to everything for 200 ms after an error. */
const AFTER_ERROR_MS = 300;
const PATIENCE_MS = 5000;

/**
 * Run in the kernel after a failure: asks Node's inspector for the script before its own. It declares
 * nothing, so that it cannot collide with the notebook's names.
 */
const QUESTION = `(() => {
  const session = new (require("inspector").Session)();
  session.connect();
  const ids = [];
  session.on("Debugger.scriptParsed", ({ params }) => {
    if (params.url === "evalmachine.<anonymous>") ids.push(params.scriptId);
  });
  session.post("Debugger.enable");
  let text = "";
  session.post("Debugger.getScriptSource", { scriptId: ids.at(-2) ?? "" }, (error, answer) => {
    text = error ? "" : answer.scriptSource;
  });
  session.disconnect();
  process.stdout.write(JSON.stringify(text));
})();`;

/** Asks a kernel for the JavaScript that it made of the cell that has just failed. */
export async function emittedCode(kernel: KernelClient): Promise<string | undefined> {
  await wait(AFTER_ERROR_MS);
  const { answer, outputs } = await kernel.execute(QUESTION, PATIENCE_MS);
  const end = await answer;
  if (end.outcome !== "replied" || end.status !== "ok") return undefined;
  const [output] = outputs();
  if (output?.output_type !== "stream" || output.name !== "stdout") return undefined;
  const text: unknown = JSON.parse(joinText(output.text));
  return typeof text === "string" && text !== "" ? text : undefined;
}
