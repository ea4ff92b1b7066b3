import type { Language } from "../words/language.js";

const MONTHS: Readonly<Record<Language, readonly string[]>> = {
  en: "January February March April May June July August September October November December".split(
    " ",
  ),
  es: "enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre".split(
    " ",
  ),
};

/** The parts of an ISO date `YYYY-MM-DD`; throws RangeError when it is no day of the calendar. */
export function dateParts(iso: string): { year: number; month: number; day: number } {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  const [year, month, day] = (match ?? []).slice(1).map(Number) as [number, number, number];
  const date = new Date(Date.UTC(year, month - 1, day));
  if (match === null || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) {
    throw new RangeError(`invalid \`meta.date\`: ${iso}; expected a day as YYYY-MM-DD`);
  }
  return { year, month, day };
}

/** A date as a reader of any country understands it: `2024-05-02` → `2 May 2024`, `2 de mayo de 2024`. */
export function longDate(iso: string, language: Language = "en"): string {
  const { year, month, day } = dateParts(iso);
  const name = MONTHS[language][month - 1];
  return language === "es" ? `${day} de ${name} de ${year}` : `${day} ${name} ${year}`;
}
