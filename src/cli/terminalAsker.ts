import { createInterface } from "node:readline";
import type { Ask } from "./askAnswers.js";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";

/**
 * Asks on the terminal. Lines that come before their question, as pasted answers do, are kept for it; the
 * end of the input, or Ctrl+C, ends the questions with an error instead of waiting for ever.
 */
export function terminalAsker(): { readonly ask: Ask; close(): void } {
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  const early: string[] = [];
  let waiting: { answer(line: string): void; stop(problem: Error): void } | undefined;
  let ended = false;
  const unanswered = () =>
    new CommandError(EXIT.usage, "\nThe questions were not answered; nothing was written.");
  terminal.on("line", (line) => {
    if (waiting) waiting.answer(line);
    else early.push(line);
    waiting = undefined;
  });
  terminal.on("close", () => {
    ended = true;
    waiting?.stop(unanswered());
  });
  const ask: Ask = (question) =>
    new Promise((answer, stop) => {
      const line = early.shift();
      if (line === undefined && ended) return stop(unanswered());
      // The prompt is the last line only: readline counts its width when it moves the cursor.
      const head = question.lastIndexOf("\n") + 1;
      process.stdout.write(question.slice(0, head));
      if (line !== undefined) {
        process.stdout.write(`${question.slice(head)}${line}\n`);
        return answer(line);
      }
      waiting = { answer, stop };
      terminal.setPrompt(question.slice(head));
      terminal.prompt();
    });
  return { ask, close: () => terminal.close() };
}
