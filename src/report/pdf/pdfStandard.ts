/**
 * Standards that a PDF can be made to: archival and tagged (`a-2a`), the same with files attached (`a-3a`),
 * universally accessible (`ua-1`), or none of them.
 */
export const PDF_STANDARDS = ["a-2a", "a-3a", "ua-1", "none"] as const;

export type PdfStandard = (typeof PDF_STANDARDS)[number];
