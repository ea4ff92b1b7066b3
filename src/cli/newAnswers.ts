import { parseQuantity } from "../quantities/parseQuantity.js";
import { LOCALE } from "../study/studySchema.js";

/** A material that a new study begins with. */
export interface NewMaterial {
  readonly role: "soil" | "sand" | "gravel";
  readonly name: string;
}

/** What `loambook new` asks for, or is told by options of the same names. */
export interface NewAnswers {
  readonly units: "SI" | "US";
  readonly title: string;
  readonly place: string;
  readonly language: string;
  readonly page: string;
  readonly currency: string;
  readonly date: string;
  readonly length: string;
  readonly height: string;
  readonly thickness: string;
  readonly strength: string;
}

export interface NewQuestion {
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
