/** The sentences of `notebook/` in Spanish, by their English text. */
export const SPANISH_NOTEBOOK: Readonly<Record<string, string>> = {
  Error: "Error",
  Warning: "Advertencia",
  Note: "Nota",
  "Found: {0}.": "Hallado: {0}.",
  "Expected: {0} Way out: {1}": "Se espera: {0} Qué hacer: {1}",
  "No findings.": "Sin observaciones.",
  ", row {0}": ", fila {0}",
  "\n  found: {0}": "\n  hallado: {0}",
  "  expected: {0}\n  way out: {1}": "  se espera: {0}\n  qué hacer: {1}",
  "— page break —": "— salto de página —",
};
