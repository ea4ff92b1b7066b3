import { IntlMessageFormat } from "intl-messageformat";
import SPANISH from "./es.json" with { type: "json" };
import { isMessage, type Message, type MessageValue, type Text } from "./message.js";
import { spanishSoilName } from "./spanishSoilName.js";

/** A language that reports and findings are complete in. */
export type Language = "en" | "es";

/** A language with, where it matters, a country: it decides the decimal sign. */
export type Locale = Language | `${Language}-${string}`;

/** The same data with every message said. */
export type Said<T> = T extends Message
  ? string
  : T extends (...args: never[]) => unknown
    ? T
    : T extends readonly (infer Item)[]
      ? number extends T["length"]
        ? readonly Said<Item>[]
        : { readonly [Index in keyof T]: Said<T[Index]> }
      : T extends object
        ? { [Key in keyof T]: Said<T[Key]> }
        : T;

/**
 * The language of a locale.
 *
 * @throws RangeError for a language that is not here.
 *
 * @example
 * languageOf("es-MX") // => "es"
 */
export function languageOf(locale: Locale): Language {
  const language = locale.split("-")[0];
  if (language !== "en" && language !== "es") {
    throw new RangeError(
      `invalid \`locale\`: ${locale}; expected en or es, with or without a country`,
    );
  }
  return language;
}

/**
 * Says a text in a language. A text that is no message, such as a user's own, stays as it is.
 *
 * @param locale default `en`.
 * @throws RangeError for a language that is not here.
 *
 * @example
 * render(say`A loss of ${1.5} %.`) // => "A loss of 1.5 %."
 * render({ number: "94.5" }, "es") // => "94,5"
 * render(say`${1}{0, plural, one { block} other { blocks}}`) // => "1 block"
 */
export function render(text: Text, locale: Locale = "en"): string {
  if (typeof text === "string") return text;
  if ("number" in text) {
    const number = withDecimalSign(text.number, locale);
    return "unit" in text ? `${number} ${text.unit}` : number;
  }
  if ("soilName" in text) {
    return languageOf(locale) === "es" ? spanishSoilName(text.soilName) : text.soilName;
  }
  const values: Record<string, string | number> = {};
  for (const [index, value] of text.values.entries()) {
    // Numbers as they are choose the plural; in the sentence itself they stand with the decimal sign.
    if (typeof value === "number") values[index] = value;
    values[`said${index}`] = renderValue(value, locale);
  }
  return String(formatOf(text.text, locale).format(values));
}

/**
 * Says every message in a piece of plain data: a table, a figure, a list of findings.
 *
 * @example
 * renderAll({ caption: say`sand`, rows: [["1"]] }, "es") // => { caption: "arena", rows: [["1"]] }
 */
export function renderAll<T>(data: T, locale: Locale = "en"): Said<T> {
  if (isMessage(data)) return render(data, locale) as Said<T>;
  if (Array.isArray(data)) return data.map((item) => renderAll(item, locale)) as Said<T>;
  if (typeof data !== "object" || data === null || ArrayBuffer.isView(data)) return data as Said<T>;
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, renderAll(value, locale)]),
  ) as Said<T>;
}

/**
 * Gives a number's text the decimal sign of a language.
 *
 * @example
 * withDecimalSign("1.5", "es") // => "1,5"
 */
export function withDecimalSign(text: string, locale: Locale): string {
  const sign = decimalSign(locale);
  return sign === "." ? text : text.replace(".", sign);
}

function renderValue(value: MessageValue, locale: Locale): string {
  return typeof value === "number" ? withDecimalSign(String(value), locale) : render(value, locale);
}

const DECIMAL_SIGNS = new Map<Locale, string>();

function decimalSign(locale: Locale): string {
  let sign = DECIMAL_SIGNS.get(locale);
  if (sign === undefined) {
    languageOf(locale);
    const parts = new Intl.NumberFormat(locale).formatToParts(1.5);
    sign = parts.find(({ type }) => type === "decimal")?.value ?? ".";
    DECIMAL_SIGNS.set(locale, sign);
  }
  return sign;
}

const CATALOGUES: Readonly<Record<Language, Readonly<Record<string, string>>>> = {
  en: {},
  es: SPANISH,
};

/** Parsed once a language: a page says the same few hundred sentences again and again. */
const FORMATS = new Map<string, IntlMessageFormat>();

function formatOf(english: string, locale: Locale): IntlMessageFormat {
  const language = languageOf(locale);
  const key = `${language} ${english}`;
  let format = FORMATS.get(key);
  if (format === undefined) {
    const text = CATALOGUES[language][english] ?? english;
    // `{0}` says the value; `{0, plural, …}` keeps the number itself.
    const said = text.replace(/\{(\d+)\}/g, "{said$1}");
    format = new IntlMessageFormat(said, language, undefined, { ignoreTag: true });
    FORMATS.set(key, format);
  }
  return format;
}
