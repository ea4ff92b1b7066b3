import { say } from "../words/message.js";
import type { Locale } from "../words/render.js";
import { elements } from "./element.js";
import { byDefault, group, list, optional, required } from "./groups.js";
import {
  BESIDE,
  date,
  type Kind,
  label,
  NOWHERE,
  number,
  oneOf,
  pattern,
  percent,
  quantity,
  text,
} from "./kinds.js";
import { cement, materials } from "./materials.js";
import { quality, tolerances } from "./quality.js";
import { checklist, decisions, report, sampling } from "./report.js";
import { sheet } from "./sheets.js";
import { site } from "./site.js";
import { strength } from "./strength.js";
import type { StudyConfig } from "./studyConfig.js";
import { carbon } from "./supply.js";
import { addSand, limits, target } from "./target.js";
import { compareMix, specified, tested, trials } from "./trials.js";

/** The value of `format` in a `study.yaml` of this version. */
export const STUDY_FORMAT = "loambook-study/1";

/** The languages that reports are complete in, with or without a country. */
export const LOCALE = /^(en|es)(-[A-Z]{2})?$/;

const readingErrors = group({
  balance: optional(
    "balanceG",
    quantity("mass", { min: 0, max: 20, example: "0.1 g" }),
    "Of each weighing on the balance.",
  ),
  sieving: optional(
    "sievingPct",
    percent("1 %", 10),
    "Mass that goes to the neighbouring sieve or is lost, of what a sieve retains.",
  ),
  hydrometer: optional(
    "hydrometerUnits",
    number({ min: 0, max: 5, example: 0.5 }),
    "Of each hydrometer reading, in units of the 152H scale (g/L).",
  ),
  temperature: optional(
    "temperatureC",
    quantity("temperature", { min: 0, max: 5, example: "0.5 C" }),
    "Of each temperature.",
  ),
});

const method = group(
  {
    test: required("test", text("Sieving with washing"), "Name of the test."),
    standard: required("standard", text("EN 933-1"), "Standard that the laboratory names."),
    edition: optional("edition", label("2012"), "Its edition."),
  },
  { name: "MethodConfig" },
);

/** All keys of `study.yaml`, in the order in which they are usually written. */
export const STUDY: Kind<StudyConfig> = group(
  {
    format: required(NOWHERE, oneOf(STUDY_FORMAT), "Version of this format."),
    invented: byDefault(
      "invented",
      oneOf(true, false),
      false,
      "Whether the laboratory's numbers are invented for a demonstration: every page says so.",
    ),
    title: optional("title", text("Reading-room wall"), "Title of the study and its reports."),
    place: optional(
      "place",
      text("Example Town, temperate climate"),
      "Where the element will stand.",
    ),
    purpose: optional(
      "purpose",
      text("Choose the blend and the least cement."),
      "What the study is for, printed on the title page.",
    ),
    date: optional("date", date("2026-05-18"), "Date of the reports."),
    language: byDefault(
      "language",
      pattern<Locale>(
        LOCALE,
        "es-MX",
        say`en or es, or one of them with a country such as es-MX.`,
        "Locale",
      ),
      "en",
      "Language of reports and findings; a country sets the decimal sign.",
    ),
    units: byDefault("units", oneOf("SI", "US"), "SI", "Units of what people read."),
    "d-sizes": byDefault(
      "sizeReading",
      oneOf("log-size", "size"),
      "log-size",
      "How D-sizes are read between two points of a curve: on a straight line over the logarithm of size, as charts are drawn, or over size, as some laboratories reckon.",
    ),
    page: byDefault("page", oneOf("A4", "us-letter"), "A4", "Paper of the reports."),
    currency: optional("currency", text("EUR"), "Currency of all prices."),
    seed: byDefault(
      "seed",
      number({ whole: true, min: 0, max: 4_294_967_295, example: 20260518 }),
      1,
      "Start of the random numbers: the same study gives the same bytes.",
    ),
    materials: required("materials", materials, "What the blend may be made of."),
    "reading-errors": byDefault(
      "readingErrors",
      readingErrors,
      {},
      "What is known of the laboratory's reading errors; the rest is taken as usual.",
    ),
    "add-sand": optional(
      "addSand",
      addSand,
      "A first mix for a soil that is known by a jar: the sand that is added for a share of fines.",
    ),
    target: optional("target", target, "What the blend aims at; without it no blend is designed."),
    limits: byDefault(
      "limits",
      limits,
      {},
      "Conditions that the blend must keep, beside the materials' own shares.",
    ),
    "max-materials": optional(
      "maxMaterials",
      number({ whole: true, min: 1, max: 12, example: 3 }),
      "How many materials may go into the blend.",
      { earlier: ["most-materials"] },
    ),
    guidance: optional(
      "guidance",
      text("walker-2005"),
      "Published recommendation, or power curves such as power-20mm-0.2-0.25, that soils and blend are held against.",
    ),
    envelope: optional(
      "envelope",
      sheet("sheets/envelope.csv"),
      "Sheet of the study's own grading envelope.",
    ),
    compaction: optional(
      "compaction",
      sheet("sheets/compaction.csv"),
      "Sheet of the compaction test; without it there is no mix.",
    ),
    cement: optional("cement", cement, "The cement, as bought."),
    strength: byDefault("strength", strength, {}, "The blocks, the curve and the requirement."),
    tested: optional(
      "tested",
      tested,
      "Which blend the study's own compaction and block sheets are of, and how the blocks were crushed.",
    ),
    trials: optional("trials", trials, "Further blends that blocks were made of."),
    "mix-from": optional(
      "mixFrom",
      text("less-sand"),
      "The trial whose blend is to be built, “tested” or an id of trials; left out, the one that the proposed blend matches.",
    ),
    mix: optional(
      "specified",
      specified,
      "The mix as the designer sets it by hand, in place of the blend, the least cement and the optimum moisture.",
    ),
    batch: optional(
      BESIDE,
      group({
        "dry-mass": required(
          "batchDryMassKg",
          quantity("kg", { min: 1, max: 20_000, example: "120 kg" }),
          "Dry mass of soil and aggregate in a batch.",
        ),
      }),
      "The batch that recipes are written for.",
    ),
    element: byDefault(
      "elements",
      elements,
      [],
      "What is to be built: one element, or a list of them, all of one mix.",
    ),
    "compare-mix": optional(
      "compareMix",
      compareMix,
      "Another mix of the element that the chosen one is held against.",
      { earlier: ["compare-blend"] },
    ),
    carbon: byDefault(
      "carbon",
      carbon,
      {},
      "Carbon factors, and the concrete that is compared with.",
    ),
    site: byDefault("site", site, {}, "What the crew works with."),
    report: optional("report", report, "How the reports look."),
    methods: byDefault("methods", list(method), [], "Test methods as the laboratory names them."),
    sampling: optional("sampling", sampling, "How samples were taken."),
    tolerances: optional(
      "tolerances",
      tolerances,
      "How far the work may stand from the specified mix.",
    ),
    quality: optional("quality", quality, "How lots of the work are sampled and judged."),
    checklist: optional(
      "checklist",
      checklist,
      "Clauses of your code, and where the report answers them.",
    ),
    decisions: optional("decisions", decisions, "What was decided on the way, and why."),
  },
  { name: "StudyConfig" },
);
