import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import type { SheetSource } from "../lab/sheetMapping.js";
import { PLACEHOLDERS } from "../study/inventedData.js";
import { STUDY_FILE } from "../study/parseStudyYaml.js";
import type { NewAnswers, NewMaterial } from "./newAnswers.js";
import { packageFolder } from "./packageFolder.js";

const EXAMPLES = { SI: "reading-room", US: "bus-shelter" } as const;

/** A material of an example study, as its file has it. */
export interface TemplateMaterial extends NewMaterial {
  readonly id: string;
  readonly sieve: SheetSource;
  readonly hydrometer?: SheetSource;
  readonly limits?: SheetSource;
  readonly "particle-density": string;
  readonly "loose-bulk-density": string;
  readonly moisture: string;
  readonly price?: string;
}

/** The entries of an example study that a new one begins with. */
export interface StudyTemplate {
  readonly folder: string;
  readonly entries: {
    readonly date: string;
    readonly currency: string;
    readonly page: string;
    readonly seed: number;
    readonly materials: readonly TemplateMaterial[];
    readonly target: object;
    readonly guidance: string;
    readonly compaction: SheetSource;
    readonly cement: { readonly [key: string]: unknown };
    readonly strength: {
      readonly sheet: SheetSource;
      readonly requirement: { readonly strength: string; readonly [key: string]: unknown };
      readonly [key: string]: unknown;
    };
    readonly batch: object;
    readonly element: Readonly<Record<"length" | "height" | "thickness", string>> &
      Readonly<Record<string, unknown>>;
  };
}

/** The invented example that a new study in these units is made from. */
export function studyTemplate(units: "SI" | "US"): StudyTemplate {
  const folder = join(packageFolder(), "data-examples", EXAMPLES[units]);
  const text = readFileSync(join(folder, STUDY_FILE), "utf8");
  // The core schema keeps dates as text.
  return { folder, entries: parse(text, { schema: "core" }) as StudyTemplate["entries"] };
}

/** What is offered where the user says nothing. */
export function templateAnswers(units: "SI" | "US"): NewAnswers {
  const { date, currency, page, element, strength } = studyTemplate(units).entries;
  const { length, height, thickness } = element;
  return {
    ...{ units, title: PLACEHOLDERS.title, place: PLACEHOLDERS.place },
    ...{ language: "en", page, currency, date, length, height, thickness },
    strength: strength.requirement.strength,
  };
}
