/** Nouns, longest first: Spanish, gender, and what follows the adjectives. */
const NOUNS: readonly (readonly [string, string, "m" | "f", string?])[] = [
  ["organic soil", "suelo", "m", "orgánico"],
  ["elastic silt", "limo", "m", "elástico"],
  ["lean clay", "arcilla", "f", "de baja plasticidad"],
  ["fat clay", "arcilla", "f", "de alta plasticidad"],
  ["gravel", "grava", "f"],
  ["sand", "arena", "f"],
  ["silt", "limo", "m"],
  ["clay", "arcilla", "f"],
  ["loam", "franco", "m"],
  ["fines", "finos", "m"],
];

/** Adjectives in the masculine; a final -o turns with the noun. */
const ADJECTIVES: Readonly<Record<string, string>> = {
  "well-graded": "bien graduado",
  "poorly graded": "mal graduado",
  "uniformly graded": "de graduación uniforme",
  "gap-graded": "de graduación discontinua",
  "multi-graded": "de graduación amplia",
  "medium-graded": "de graduación media",
  "even-graded": "de graduación uniforme",
  "silty, clayey": "limo-arcilloso",
  silty: "limoso",
  clayey: "arcilloso",
  sandy: "arenoso",
  gravelly: "gravoso",
  loamy: "franco",
  organic: "orgánico",
  // Before “loam”, in the textures of the USDA.
  "sandy clay": "arcillo-arenoso",
  "silty clay": "arcillo-limoso",
  clay: "arcilloso",
  silt: "limoso",
};

const DEGREES: Readonly<Record<string, string>> = {
  very: "muy",
  extremely: "extremadamente",
  slightly: "ligeramente",
};

const PLASTICITY: Readonly<Record<string, string>> = {
  low: "baja",
  intermediate: "media",
  high: "alta",
  "very high": "muy alta",
  "extremely high": "extremadamente alta",
};

/**
 * A soil's class name in Spanish: the noun first, then its adjectives from the last to the first, each in
 * the noun's gender. Terms from memory, as taught in soil mechanics in Spanish.
 */
export function spanishSoilName(english: string): string {
  if (english === "not classified") return "sin clasificar";
  const [, head, plasticity, others] =
    /^(.*?)(?: of (.*) plasticity)?(?: with (.*))?$/.exec(english) ?? [];
  const said = [nounPhrase(head)];
  if (plasticity) said.push(`de plasticidad ${PLASTICITY[plasticity] ?? plasticity}`);
  if (others) said.push(`con ${others.split(" and ").map(nounPhrase).join(" y ")}`);
  return said.join(" ");
}

function nounPhrase(english: string): string {
  const [word, noun, gender, tail] = NOUNS.find(([word]) => english.endsWith(word)) ?? [
    "",
    "",
    "m",
  ];
  const adjectives = english.slice(0, english.length - word.length).trim();
  return [noun, ...spanishAdjectives(adjectives, gender as "m" | "f"), tail ?? ""]
    .filter(Boolean)
    .join(" ");
}

/** The adjectives before a noun, the one nearest to it first. */
function spanishAdjectives(english: string, gender: "m" | "f"): string[] {
  if (english === "") return [];
  const found = Object.keys(ADJECTIVES)
    .filter((adjective) => english.endsWith(adjective))
    .sort((a, b) => b.length - a.length)[0];
  if (found === undefined) return [english];
  const rest = english.slice(0, english.length - found.length).trim();
  const degree = Object.keys(DEGREES).find((word) => rest.endsWith(word));
  const spanish = gender === "f" ? ADJECTIVES[found].replace(/o$/, "a") : ADJECTIVES[found];
  const said = degree ? `${DEGREES[degree]} ${spanish}` : spanish;
  const before = degree ? rest.slice(0, rest.length - degree.length).trim() : rest;
  return [said, ...spanishAdjectives(before, gender)];
}
