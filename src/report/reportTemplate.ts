/**
 * Forms that a report can be made in.
 * - `permit`: for a reviewer: title page, contents, all tables, the files read and the computation.
 * - `handout`: for a workshop: a short title block, larger type, lines to write on below exercises (cells
 *   tagged `exercise`, or `exercise-8` for eight lines), no checksums and no computation.
 */
export const REPORT_TEMPLATES = ["permit", "handout"] as const;

export type ReportTemplate = (typeof REPORT_TEMPLATES)[number];
