import { parseHeaderCell } from "../quantities/parseHeaderCell.js";
import type { Finding } from "./finding.js";
import type { MappingPlace } from "./mappedTargets.js";
import type { SheetGrid } from "./sheetGrid.js";
import type { SheetMapping } from "./sheetMapping.js";

/**
 * A finding about a sheet that was read through a mapping, told in the user's own words: their header
 * cell in place of ours, and the entry of the study for a line that stands there.
 *
 * @param grid the sheet as given: with it values stand as they are written there.
 */
export function ownPlaces(
  finding: Finding,
  mapping: SheetMapping,
  place: MappingPlace,
  grid?: SheetGrid,
): Finding {
  const { row, column } = finding;
  if (row !== undefined && row <= 0) {
    const { row: _, ...rest } = finding;
    const fact = Object.keys(mapping.facts)[-row];
    return { ...rest, file: place.file, column: `${place.key}.facts.${fact}` };
  }
  const value = writtenValue(finding, mapping, grid);
  if (column === undefined) return { ...finding, ...value };
  const named = Object.entries({ ...mapping.lines, ...mapping.columns });
  const own =
    named.find(([, ours]) => ours === column) ??
    named.find(([, ours]) => parseHeaderCell(ours).name === column);
  return { ...finding, ...value, ...(own ? { column: own[0] } : {}) };
}

/** The cell as it stands in the user's sheet, where a comma or a text was read as something else. */
function writtenValue(
  { row, value }: Finding,
  { cells }: SheetMapping,
  grid: SheetGrid | undefined,
): { value?: string } {
  const raw = grid?.rows[(row ?? 0) - 1] ?? [];
  if (value === undefined || raw.includes(value)) return {};
  const written = raw.find(
    (cell) => cells[cell] === value || cell.replaceAll(".", "").replace(",", ".") === value,
  );
  return written === undefined ? {} : { value: written };
}
