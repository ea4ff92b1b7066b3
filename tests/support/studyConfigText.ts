import { BESIDE, type Kind, NOWHERE, type Rows } from "../../src/entries/kinds.js";
import { STUDY } from "../../src/entries/study.js";

/** Types that the configuration names without making them, and where they stand. */
const IMPORTS = {
  BlendLimit: "../blend/target.js",
  ElementConfig: "./element.js",
  FixedOrRange: "../blend/target.js",
  Locale: "../words/render.js",
  SheetSource: "../lab/sheet/grid.js",
  SourcedRange: "../quantities/sourcedRange.js",
  StrengthCovariate: "../strength/regression/model.js",
  WrittenPrice: "./supply.js",
};

/** What no key of the table names by itself. */
const BY_HAND = `
/** A reading that stands in the regression, and where the curve is asked. */
export interface CovariateConfig {
  readonly kind: StrengthCovariate;
  /** kg/m³ or percent; without it the mean of the blocks. The age is that of the requirement. */
  readonly at?: number;
}
`;

/** The interfaces of the configuration, as the table of keys has them, before formatting. */
export function studyConfigText(): string {
  const types = new Map<string, string>();

  const typeOf = (kind: Kind<unknown>): string => {
    const { name } = kind;
    if (name === undefined) return bodyOf(kind);
    if (!types.has(name)) {
      types.set(name, "");
      const body = bodyOf(kind);
      const isInterface = kind.type === undefined && kind.parts?.kind === "group";
      types.set(
        name,
        isInterface ? `export interface ${name} ${body}` : `export type ${name} = ${body};`,
      );
    }
    return name;
  };

  const bodyOf = ({ type, parts }: Kind<unknown>): string => {
    if (type !== undefined) return type;
    if (parts === undefined) throw new TypeError("a kind without type or parts");
    if (parts.kind === "list") return `readonly ${bracketed(typeOf(parts.item))}[]`;
    if (parts.kind === "names") return `Readonly<Record<string, ${typeOf(parts.item)}>>`;
    if (parts.kind === "forms") {
      return [...new Set(Object.values(parts.forms).map(typeOf))].join(" | ");
    }
    const constants = Object.entries(parts.constants).map(
      ([name, value]) => `  readonly ${name}: ${JSON.stringify(value)};`,
    );
    return `{\n${[...constants, ...members(parts.rows, false)].join("\n")}\n}`;
  };

  const members = (rows: Rows, mayMiss: boolean): string[] =>
    Object.values(rows).flatMap((row) => {
      const { as, kind, need, says, byDefault } = row;
      if (as === NOWHERE) return [];
      const isThere = need !== "optional" && !mayMiss;
      if (as === BESIDE && kind.parts?.kind === "group") {
        return members(kind.parts.rows, !isThere);
      }
      const taken =
        byDefault === undefined || typeof byDefault === "object" ? "" : ` Default ${byDefault}.`;
      return [
        `  /** ${says}${taken} */`,
        `  readonly ${as}${isThere ? "" : "?"}: ${typeOf(kind)};`,
      ];
    });

  typeOf(STUDY);
  const text = [...types.values()].reverse().join("\n\n");
  const imports = Object.entries(IMPORTS)
    .filter(([name]) => new RegExp(`\\b${name}\\b`).test(`${text}${BY_HAND}`))
    .map(([name, from]) => `import type { ${name} } from "${from}";`);
  return `// Made from the table of keys by "npm run schema": a change here is lost.\n${imports.join("\n")}\n${BY_HAND}\n${text}\n`;
}

function bracketed(type: string): string {
  return /[|&]/.test(type) ? `(${type})` : type;
}
