/** A file inside the PDF: allowed by PDF/A-3 (ISO 19005-3, from memory), not by PDF/A-2. */
export interface PdfAttachment {
  /** As a reader lists it; may hold a folder, `sheets/sand.csv`. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly mimeType: string;
  /** One phrase for who opens the PDF. */
  readonly description: string;
  /** `source`: the report was computed from it; `data`: it holds what the report shows. */
  readonly relationship: "source" | "data";
}
