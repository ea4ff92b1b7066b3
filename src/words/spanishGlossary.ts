/** How a trade term is said in Spanish, and how we know it. */
export interface GlossaryTerm {
  readonly english: string;
  readonly spanish: string;
  /** Other words in use for it, by country or school. */
  readonly alsoSaid?: string;
  readonly basis: "from memory";
}

const term = (english: string, spanish: string, alsoSaid?: string): GlossaryTerm => ({
  english,
  spanish,
  ...(alsoSaid === undefined ? {} : { alsoSaid }),
  basis: "from memory",
});

/**
 * The trade terms of the Spanish words. None was read in a standard for this project: all are from memory,
 * as used in soil mechanics and earth building; a user who knows the local word may prefer it.
 *
 * @example
 * SPANISH_GLOSSARY.find(({ english }) => english === "liquid limit").spanish // => "límite líquido"
 */
export const SPANISH_GLOSSARY: readonly GlossaryTerm[] = [
  term("rammed earth", "tierra apisonada", "tapia, tapial"),
  term("grading", "granulometría"),
  term("sieve", "tamiz"),
  term("hydrometer", "densímetro", "hidrómetro"),
  term("pipette", "pipeta"),
  term("liquid limit", "límite líquido"),
  term("plastic limit", "límite plástico"),
  term("plasticity index", "índice de plasticidad"),
  term("linear shrinkage", "retracción lineal", "contracción lineal"),
  term("particle density", "densidad de partículas"),
  term("loose bulk density", "densidad aparente suelta"),
  term("dry density", "densidad seca"),
  term("zero air voids", "cero huecos de aire", "línea de saturación"),
  term("clay", "arcilla"),
  term("silt", "limo"),
  term("sand", "arena"),
  term("gravel", "grava"),
  term("fines", "finos"),
  term("aggregate", "árido", "agregado"),
  term("blend", "combinación", "mezcla de materiales"),
  term("block", "probeta", "espécimen"),
  term("batch", "amasada", "bachada"),
  term("lift", "tongada", "capa"),
  term("bucket", "cubo", "balde"),
  term("envelope", "huso", "banda granulométrica"),
  term("compaction", "compactación"),
  term("curing", "curado"),
];
