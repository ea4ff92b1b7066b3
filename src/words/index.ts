/** Messages as data, and how they are said in a language. @module */
export {
  isMessage,
  joinTexts,
  type Message,
  type MessageValue,
  type Sentence,
  type SoilName,
  say,
  soilNamed,
  type Text,
  type WrittenNumber,
  wordFor,
} from "./message.js";
export {
  type Language,
  type Locale,
  languageOf,
  render,
  renderAll,
  type Said,
  withDecimalSign,
} from "./render.js";
export { SHOWN_CODES, type ShownCode } from "./shownCodes.js";
export { slug } from "./slug.js";
export { type GlossaryTerm, SPANISH_GLOSSARY } from "./spanishGlossary.js";
