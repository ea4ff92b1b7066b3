import { SPANISH_BATCH } from "./batch.js";
import { SPANISH_BLEND } from "./blend.js";
import { SPANISH_CLI } from "./cli.js";
import { SPANISH_FIGURES } from "./figures.js";
import { SPANISH_GRADING } from "./grading.js";
import { SPANISH_GUIDANCE } from "./guidance.js";
import { SPANISH_LAB } from "./lab.js";
import { SPANISH_NOTEBOOK } from "./notebook.js";
import { SPANISH_REPORT } from "./report.js";
import { SPANISH_SOIL } from "./soil.js";
import { SPANISH_STRENGTH } from "./strength.js";
import { SPANISH_STUDY } from "./study.js";
import { SPANISH_TABLES } from "./tables.js";
import { SPANISH_WORDS } from "./words.js";
import { SPANISH_WORKSHOP } from "./workshop.js";

/** Every sentence in Spanish, by its English text. The terms are those of `glossary.ts`. */
export const SPANISH: Readonly<Record<string, string>> = {
  ...SPANISH_BATCH,
  ...SPANISH_BLEND,
  ...SPANISH_CLI,
  ...SPANISH_FIGURES,
  ...SPANISH_GRADING,
  ...SPANISH_GUIDANCE,
  ...SPANISH_LAB,
  ...SPANISH_NOTEBOOK,
  ...SPANISH_REPORT,
  ...SPANISH_SOIL,
  ...SPANISH_STRENGTH,
  ...SPANISH_STUDY,
  ...SPANISH_TABLES,
  ...SPANISH_WORDS,
  ...SPANISH_WORKSHOP,
};
