import { say } from "../words/message.js";
import { byDefault, group, list, optional, required } from "./groups.js";
import { type Kind, number, oneOf, percent, positive, quantity, shaped } from "./kinds.js";
import type { SiteConfig } from "./studyConfig.js";

const truck = group({
  payload: required("payloadKg", positive("kg", "9 t"), "What it carries."),
  body: required("bodyM3", positive("m3", "6 m3"), "Loose volume of its body."),
});

const forms = group({
  area: required("formsAtHandM2", positive("area", "8 m2"), "Area of the forms at hand."),
  "set-and-ram": required(
    "hoursToSetAndRam",
    quantity("h", { above: 0, max: 1000, example: "8 h" }),
    "Time to set all of them and ram them full.",
  ),
  "working-day": required(
    "workingHoursADay",
    quantity("h", { above: 0, max: 24, example: "8 h" }),
    "Length of a working day.",
  ),
});

const trialForm = group({
  length: required("lengthM", positive("m", "100 mm"), "Inside the form."),
  width: required("widthM", positive("m", "100 mm"), "Inside the form."),
  height: required("heightM", positive("m", "100 mm"), "Of the block after ramming."),
  blocks: required(
    "blocks",
    number({ whole: true, min: 1, max: 200, example: 6 }),
    "Blocks of one batch.",
  ),
  lifts: byDefault(
    "lifts",
    number({ whole: true, min: 1, max: 20, example: 3 }),
    1,
    "Lifts of one block.",
  ),
});

const trial = group(
  {
    "dry-mass": optional(
      "dryMassKg",
      positive("kg", "10 kg"),
      "Dry mass of soil and aggregate in it.",
    ),
    form: optional("form", trialForm, "The form that it must fill, in place of its dry mass."),
    "scale-step": required(
      "scaleStepKg",
      positive("kg", "10 g"),
      "The least that the scale for it shows.",
    ),
    cement: optional(
      "cementPct",
      list(percent("6 %", 50), { min: 1, max: 8 }),
      "Cement contents to make blocks with; left out, those of the blocks made so far.",
    ),
  },
  {
    checks: [
      {
        holds: ({ dryMassKg, form }) => (dryMassKg === undefined) !== (form === undefined),
        message: say`A trial batch is sized either by its mass or by the form that it fills.`,
        expected: say`dry-mass or form, one of the two`,
      },
    ],
  },
);

/** `site`: what the crew works with. Every key may be left out; the sheet says where a default was used. */
export const site: Kind<SiteConfig> = group(
  {
    bucket: optional(
      "bucketL",
      positive("L", "12 L"),
      "Volume of a bucket struck level, measured with water; left out, 10 L, in US units 5 gal.",
    ),
    "bucket-step": optional(
      "bucketStep",
      oneOf(1, 0.5),
      "Smallest part of a bucket; left out, 0.5.",
    ),
    mixer: optional(
      "mixerVolumeL",
      positive("L", "150 L"),
      "Loose volume that the mixer takes; left out, the batch of the study.",
    ),
    "batch-fills": optional(
      "batchFills",
      oneOf("lift"),
      "Sizes the batch as near below one lift of the element as buckets allow, in place of a mixer.",
    ),
    "cement-by": optional(
      "cementBy",
      oneOf("bucket", "scale"),
      "How cement is measured on site; left out, by scale.",
    ),
    scale: optional(
      "scaleStepKg",
      quantity("kg", { above: 0, max: 20, example: "0.5 kg" }),
      "The least that the scale for a batch shows: masses on the cards are rounded to it, where the mix allows it.",
    ),
    tolerance: optional(
      "tolerancePct",
      percent("1 %", 10),
      "Points of moisture below and above the target; left out, the window of the compaction test.",
    ),
    stripping: optional(
      "strippingHours",
      quantity("h", { min: 0, max: 1000, example: "24 h" }),
      "Time until the forms come off; left out, a line to write it on.",
    ),
    "damp-curing": optional(
      "dampDays",
      shaped(quantity("age", { min: 1, max: 90, example: "7 d" }), "number", (days) =>
        Math.ceil(days),
      ),
      "Time of damp curing, in whole days; left out, a line to write it on.",
    ),
    labels: optional(
      "labels",
      number({ whole: true, min: 1, max: 200, example: 8 }),
      "Labels to print; left out, 8.",
    ),
    truck: optional("truck", truck, "What a truck takes; left out, no loads are counted.", {
      earlier: ["lorry"],
    }),
    forms: optional(
      "forms",
      forms,
      "The forms at hand and the pace of the work; left out, no days are counted.",
    ),
    trial: optional(
      "trial",
      trial,
      "A small batch to make test blocks of, or to try first beside the full one.",
    ),
  },
  {
    name: "SiteConfig",
    checks: [
      {
        holds: ({ mixerVolumeL, batchFills }) =>
          mixerVolumeL === undefined || batchFills === undefined,
        message: say`A batch cannot be sized both by the mixer and by the lift.`,
        expected: say`mixer or batch-fills, not both`,
      },
    ],
  },
);
