import { z } from "zod";
import { phrase } from "../words/say.js";
import type { ClauseConfig, DecisionConfig } from "./reviewConfig.js";
import { text } from "./schemaFields.js";

/** A calendar date, as the study's own. */
export const dateField = z.iso.date(
  phrase`A date is written year-month-day, for example 2026-05-18.`,
);

/** `checklist`: the clauses that a reviewer will look for. */
export const checklistSchema = z.array(
  z
    .strictObject({
      clause: text,
      requirement: text,
      "answered-by": text.optional(),
      remark: text.optional(),
    })
    .transform(
      (entry): ClauseConfig => ({
        ...{ clause: entry.clause, requirement: entry.requirement },
        ...(entry["answered-by"] === undefined ? {} : { answeredBy: entry["answered-by"] }),
        ...(entry.remark === undefined ? {} : { remark: entry.remark }),
      }),
    ),
);

/** `decisions`: what was decided on the way, and why. */
export const decisionsSchema = z.array(
  z
    .strictObject({ date: dateField, what: text, why: text, "instead-of": text.optional() })
    .transform(
      (entry): DecisionConfig => ({
        ...{ date: entry.date, what: entry.what, why: entry.why },
        ...(entry["instead-of"] === undefined ? {} : { insteadOf: entry["instead-of"] }),
      }),
    ),
);
