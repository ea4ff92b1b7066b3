import { Script } from "node:vm";

/** The first line of an answer cell: what somebody wrote stands between the sign and the end. */
const ANSWER = /^([ \t]*let my[A-Z]\w*[ \t]*=[ \t]*)(.*?)[ \t]*;?[ \t]*$/m;
const ASKS = /\b(?:checkAnswer|predict)\(/;
/** Words alone, such as `the same` or `gravel -1`: no sum, and no name that a cell of answers knows. */
const WORDS = /^\p{L}[\p{L}\p{M}\p{N} ,'’+−-]*$/u;
const NAMES = /^(?:undefined|null|true|false|NaN|Infinity)$|\bmy[A-Z]/;
const QUOTES = /^["'“”„«»‘’]+|["'“”„«»‘’]+$/g;

/**
 * Takes what stands in an answer cell as somebody wrote it. `let myShare = 59,1;` and `let mySort = less;` are
 * no TypeScript, and what the compiler says about them helps no pupil: they become texts, which
 * `checkAnswer` and `predict` answer in plain words. Numbers, sums and texts in quotation marks stay as they are,
 * and so does every cell that asks for no answer.
 *
 * @param code of a cell
 *
 * @example
 * answerAsTyped("let myShare = 59,1;\nawait show(loam.checkAnswer('share', myShare));").split("\n")[0] // => 'let myShare = "59,1";'
 * answerAsTyped("let mySort = the same;\nloam.predict('sort', mySort);").split("\n")[0] // => 'let mySort = "the same";'
 * answerAsTyped("let myShare = 100 * (1 - 300 / 1200);\nloam.predict('share', myShare);").split("\n")[0] // => "let myShare = 100 * (1 - 300 / 1200);"
 */
export function answerAsTyped(code: string): string {
  const found = ASKS.test(code) ? ANSWER.exec(code) : null;
  if (found === null) return code;
  const [line, start, written] = found;
  const words = WORDS.test(written) && !NAMES.test(written);
  if (!words && isCode(code)) return code;
  const answer = written === "" ? "undefined" : JSON.stringify(written.replace(QUOTES, ""));
  const changed = code.replace(line, () => `${start}${answer};`);
  // something else is wrong with the cell: the compiler tells it
  return isCode(changed) ? changed : code;
}

/** Whether JavaScript could be made of a cell; nothing of it runs. */
function isCode(code: string): boolean {
  try {
    new Script(`async () => {\n${code}\n};`);
    return true;
  } catch {
    return false;
  }
}
