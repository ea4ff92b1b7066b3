/** A language that reports and findings are complete in. */
export type Language = "en" | "es";

/** A language with, where it matters, a country: it decides the decimal sign. */
export type Locale = Language | `${Language}-${string}`;

/** Of this process: what is read, computed and printed in it speaks to one reader. */
let current: { readonly language: Language; readonly decimalSign: string } = {
  language: "en",
  decimalSign: ".",
};

/**
 * Sets the language of all words that are made from now on, and the decimal sign of numbers in them.
 *
 * `openStudy` calls it with the study's own language; a notebook that shows two studies speaks the
 * language of the one opened last. Sheets are read the same way in every language: with a decimal point.
 *
 * @param locale `en`, `es`, or one of them with a country, for example `es-MX`.
 * @throws RangeError for a language that is not here.
 *
 * @example
 * useLanguage("en") // => "en"
 */
export function useLanguage(locale: Locale): Language {
  const language = locale.split("-")[0];
  if (language !== "en" && language !== "es") {
    throw new RangeError(
      `invalid \`locale\`: ${locale}; expected en or es, with or without a country`,
    );
  }
  const parts = new Intl.NumberFormat(locale).formatToParts(1.5);
  current = {
    language,
    decimalSign: parts.find(({ type }) => type === "decimal")?.value ?? ".",
  };
  return language;
}

/**
 * The language that words are made in: `en` until `useLanguage` says otherwise.
 *
 * @example
 * currentLanguage() // => "en"
 */
export function currentLanguage(): Language {
  return current.language;
}

/** Gives a number's text the decimal sign of the language. */
export function localNumber(text: string): string {
  return current.decimalSign === "." ? text : text.replace(".", current.decimalSign);
}
