import { createInterface } from "node:readline";
import { LOCALE } from "../entries/study.js";
import { parseQuantity } from "../quantities/parseQuantity.js";
import { misuse } from "./call.js";

/** A material that a new study begins with. */
export interface NewMaterial {
  readonly role: "soil" | "sand" | "gravel";
  readonly name: string;
}

/** What `loambook new` asks for, or is told by options of the same names. */
export interface NewAnswers
  extends Readonly<
    Record<
      | ("title" | "place" | "language" | "page" | "currency" | "date")
      | ("length" | "height" | "thickness" | "strength"),
      string
    >
  > {
  readonly units: "SI" | "US";
}

interface NewQuestion {
  readonly option: keyof NewAnswers;
  readonly ask: string;
  /** What is wrong with an answer; none where it will do. */
  readonly wrong: (answer: string) => string | undefined;
}

const text = (answer: string) =>
  answer.trim() === "" || /\p{Cc}/u.test(answer) ? "a text of one line" : undefined;

const oneOf =
  (...known: readonly string[]) =>
  (answer: string) =>
    known.includes(answer) ? undefined : known.join(" or ");

const quantity = (dimension: "length" | "stress", example: string) => (answer: string) => {
  const parsed = parseQuantity(answer, dimension);
  return "value" in parsed && parsed.value > 0
    ? undefined
    : `a value with its unit, for example “${example}”`;
};

/** In the order in which they are asked; the units first, because the examples depend on them. */
export const NEW_QUESTIONS: readonly NewQuestion[] = [
  { option: "units", ask: "Units of what people read: SI or US", wrong: oneOf("SI", "US") },
  { option: "title", ask: "Title of the study", wrong: text },
  { option: "place", ask: "Where the wall will stand", wrong: text },
  {
    option: "language",
    ask: "Language of the report: en or es, with a country where the decimal sign matters (es-MX)",
    wrong: (answer) => (LOCALE.test(answer) ? undefined : "en or es, or for example es-MX"),
  },
  { option: "page", ask: "Paper: A4 or us-letter", wrong: oneOf("A4", "us-letter") },
  { option: "currency", ask: "Currency of the prices", wrong: text },
  {
    option: "date",
    ask: "Date of the report, year-month-day",
    wrong: (answer) =>
      /^\d{4}-\d{2}-\d{2}$/.test(answer) && !Number.isNaN(Date.parse(answer))
        ? undefined
        : "a date such as 2026-05-18",
  },
  { option: "length", ask: "Wall: length", wrong: quantity("length", "6.4 m") },
  { option: "height", ask: "Wall: height", wrong: quantity("length", "2.7 m") },
  { option: "thickness", ask: "Wall: thickness", wrong: quantity("length", "400 mm") },
  { option: "strength", ask: "Required strength", wrong: quantity("stress", "1.5 MPa") },
];

/** Reads `sand: River sand 0/4`; none where it is no such thing. */
export function parseMaterial(written: string): NewMaterial | undefined {
  const [, role, name] = /^\s*(soil|sand|gravel)\s*[:=]\s*(.*\S)\s*$/.exec(written) ?? [];
  if (role === undefined || text(name) !== undefined) return undefined;
  return { role: role as NewMaterial["role"], name };
}

/** Puts one line to the user and gives back what they typed. */
type Ask = (line: string) => Promise<string>;

/** Asks until the answer will do; an empty line takes what stands in brackets. */
async function askOne(
  ask: Ask,
  question: Pick<NewQuestion, "ask" | "wrong">,
  byDefault: string,
): Promise<string> {
  let complaint = "";
  for (;;) {
    const typed = (await ask(`${complaint}${question.ask} [${byDefault}]: `)).trim();
    const answer = typed === "" ? byDefault : typed;
    const wrong = question.wrong(answer);
    if (wrong === undefined) return answer;
    complaint = `  “${answer}” will not do: ${wrong}.\n`;
  }
}

/**
 * Asks for everything that was not told already.
 *
 * @param defaultsOf what to offer, once the units are known.
 */
export async function askAnswers(
  ask: Ask,
  told: Partial<NewAnswers>,
  defaultsOf: (units: "SI" | "US") => NewAnswers,
): Promise<NewAnswers> {
  let answers: NewAnswers = { ...defaultsOf(told.units ?? "SI"), ...told };
  for (const question of NEW_QUESTIONS) {
    const { option } = question;
    if (told[option] !== undefined) continue;
    const answer = await askOne(ask, question, answers[option]);
    // What is offered from here on is in the units that were just chosen.
    if (option === "units") answers = { ...defaultsOf(answer as "SI" | "US"), ...told };
    answers = { ...answers, [option]: answer };
  }
  return answers;
}

const MAX_BOUGHT = 11;

/** Asks for the materials: the site soil, then what can be bought near it. */
export async function askMaterials(
  ask: Ask,
  byDefault: readonly NewMaterial[],
): Promise<NewMaterial[]> {
  const name = (material: string) => ({
    ask: material,
    wrong: (answer: string) => (parseMaterial(`soil: ${answer}`) ? undefined : "a name"),
  });
  const [soil, ...others] = byDefault;
  const materials: NewMaterial[] = [
    { role: "soil", name: await askOne(ask, name("Name of the site soil"), soil.name) },
  ];
  const count = await askOne(
    ask,
    {
      ask: "How many sands and gravels can be had",
      wrong: (answer) =>
        /^\d+$/.test(answer) && Number(answer) <= MAX_BOUGHT
          ? undefined
          : `a whole number from 0 to ${MAX_BOUGHT}`,
    },
    String(others.length),
  );
  for (let at = 0; at < Number(count); at++) {
    const offered = others[at] ?? { role: "sand" as const, name: `Sand ${at + 1}` };
    const role = await askOne(
      ask,
      {
        ask: `Material ${at + 2}: sand or gravel`,
        wrong: (answer) => (/^(sand|gravel)$/.test(answer) ? undefined : "sand or gravel"),
      },
      offered.role,
    );
    const own = offered.role === role ? offered.name : `Gravel ${at + 1}`;
    materials.push({
      role: role as NewMaterial["role"],
      name: await askOne(ask, name(`Material ${at + 2}: its name`), own),
    });
  }
  return materials;
}

/**
 * Asks on the terminal. Lines that come before their question, as pasted answers do, are kept for it; the
 * end of the input, or Ctrl+C, ends the questions with an error instead of waiting for ever.
 */
export function terminalAsker(): { readonly ask: Ask; close(): void } {
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  const early: string[] = [];
  let waiting: { answer(line: string): void; stop(problem: Error): void } | undefined;
  let ended = false;
  const unanswered = () => misuse("\nThe questions were not answered; nothing was written.");
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
