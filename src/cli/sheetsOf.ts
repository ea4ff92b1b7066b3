import type { SheetSource } from "../lab/sheetMapping.js";

/** The files of sheets, whether named bare or with how they are read; those that are not given are left out. */
export function sheetsOf(...sources: readonly (SheetSource | undefined)[]): string[] {
  return sources.flatMap((source) => {
    if (source === undefined) return [];
    return [typeof source === "string" ? source : source.sheet];
  });
}
