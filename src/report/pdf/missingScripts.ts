/** A script of Unicode, and a free font that has it (Noto, SIL Open Font License; names from memory). */
const SCRIPTS: readonly (readonly [script: string, font: string])[] = [
  ["Arabic", "Noto Sans Arabic"],
  ["Armenian", "Noto Sans Armenian"],
  ["Bengali", "Noto Sans Bengali"],
  ["Devanagari", "Noto Sans Devanagari"],
  ["Ethiopic", "Noto Sans Ethiopic"],
  ["Georgian", "Noto Sans Georgian"],
  ["Gujarati", "Noto Sans Gujarati"],
  ["Gurmukhi", "Noto Sans Gurmukhi"],
  ["Han", "Noto Sans SC, TC, JP or KR"],
  ["Hangul", "Noto Sans KR"],
  ["Hebrew", "Noto Sans Hebrew"],
  ["Hiragana", "Noto Sans JP"],
  ["Katakana", "Noto Sans JP"],
  ["Kannada", "Noto Sans Kannada"],
  ["Khmer", "Noto Sans Khmer"],
  ["Lao", "Noto Sans Lao"],
  ["Malayalam", "Noto Sans Malayalam"],
  ["Myanmar", "Noto Sans Myanmar"],
  ["Nko", "Noto Sans NKo"],
  ["Sinhala", "Noto Sans Sinhala"],
  ["Tamil", "Noto Sans Tamil"],
  ["Telugu", "Noto Sans Telugu"],
  ["Thai", "Noto Sans Thai"],
  ["Tibetan", "Noto Serif Tibetan"],
  ["Tifinagh", "Noto Sans Tifinagh"],
];

/** Fonts that would draw the characters given, one a script; empty where no script is known here. */
export function missingScripts(
  signs: Iterable<string>,
): readonly { readonly script: string; readonly font: string }[] {
  const text = [...signs].join("");
  return SCRIPTS.filter(([script]) => new RegExp(`\\p{Script=${script}}`, "u").test(text)).map(
    ([script, font]) => ({ script, font }),
  );
}
