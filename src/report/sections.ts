import type { Place, SectionLink } from "../blocks/block.js";
import { isNumbered } from "../blocks/kinds.js";
import { type Finding, finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import { type Locale, render } from "../words/render.js";
import { slug } from "../words/slug.js";
import { type DocumentNode, type HeadingNode, plainText } from "./document.js";

/**
 * Numbers sections (1, 1.1, …), annexes (A, B, …), figures and tables in reading order and gives headings
 * their ids, in one place, so that HTML and PDF agree. A heading that skips a level is raised to the
 * next one below its parent, because readers of the page's structure rely on that order.
 */
export function numberNodes(nodes: readonly DocumentNode[], locale: Locale = "en"): DocumentNode[] {
  let [figures, tables, lastLevel, annexes] = [0, 0, 0, 0];
  let counters: (number | string)[] = [];
  const used = new Map<string, number>();
  return nodes.map((node): DocumentNode => {
    if (node.kind === "figure") return { ...node, number: ++figures };
    if (isNumbered(node.kind)) return { ...node, number: ++tables } as DocumentNode;
    if (node.kind !== "heading") return node;
    const level = Math.min(node.level, lastLevel + 1);
    lastLevel = level;
    const isAnnex = node.annex === true && level === 1;
    if (isAnnex) {
      annexes += 1;
      counters = [annexLetter(annexes)];
    } else {
      counters = counters.slice(0, level);
      counters[level - 1] = 1 + Number(counters[level - 1] ?? 0);
    }
    const base = `s-${slug(plainText(node.inlines)) || "section"}`;
    const times = (used.get(base) ?? 0) + 1;
    used.set(base, times);
    const id = times === 1 ? base : `${base}--${times}`;
    const number = counters.join(".");
    return { ...node, level, id, number: isAnnex ? render(say`Annex ${number}`, locale) : number };
  });
}

/** A, B, … Z, AA. */
function annexLetter(count: number): string {
  const last = String.fromCharCode(65 + ((count - 1) % 26));
  return count > 26 ? annexLetter(Math.floor((count - 1) / 26)) + last : last;
}

/**
 * Finds where the links and citations of tables and paragraphs lead: to a table, figure or section by its
 * key, or to a row of a table by its own. What this report does not have is not linked.
 */
export function placeReferences(nodes: readonly DocumentNode[], locale: Locale): DocumentNode[] {
  const known = new Map<string, Place>();
  for (const [key, place] of nodes.flatMap((node) => placesOf(node, locale))) {
    // the first of a name is the one that is meant
    if (!known.has(key)) known.set(key, place);
  }
  return nodes.map((node): DocumentNode => {
    const found = keysOf(node).flatMap((key) => {
      const place = known.get(key);
      return place ? [[key, place] as const] : [];
    });
    return found.length === 0
      ? node
      : ({ ...node, places: Object.fromEntries(found) } as DocumentNode);
  });
}

/** What of a node can be cited: itself by its key, and the rows of a table by theirs. */
function placesOf(node: DocumentNode, locale: Locale): [key: string, place: Place][] {
  switch (node.kind) {
    case "heading": {
      const { id, number = "", annex } = node;
      const label = annex ? number : render(say`section ${number}`, locale);
      return node.key ? [[node.key, { id, label }]] : [];
    }
    case "figure": {
      const { key, number = "" } = node;
      const label = render(say`Figure ${number}`, locale);
      return key ? [[key, { id: `figure-${number}`, label }]] : [];
    }
    case "table":
    case "checklist":
    case "keyValues": {
      const { key, number = "" } = node;
      const label = render(say`Table ${number}`, locale);
      const rows = node.kind === "table" ? (node.rowKeys ?? []) : [];
      return [
        ...(key ? [[key, { id: `table-${number}`, label }] as [string, Place]] : []),
        ...rows
          .filter((row) => row !== "")
          .map((row): [string, Place] => [row, { id: `row-${slug(row, 200)}`, label }]),
      ];
    }
    default:
      return [];
  }
}

/** The keys whose places a node has to know. */
function keysOf(node: DocumentNode): readonly string[] {
  switch (node.kind) {
    case "paragraph":
      return node.cites ?? [];
    case "keyValues":
      return node.items.flatMap(({ to }) => to ?? []);
    case "table": {
      const { links = [], rowKeys = [] } = node;
      return [...links.map(({ to }) => to), ...rowKeys.filter((key) => key !== "")];
    }
    default:
      return [];
  }
}

const TAG = /^section-(.+)$/;

/** Gives the first heading of a cell the key that the cell's tag `section-<key>` holds. */
export function keyedSection(
  nodes: readonly DocumentNode[],
  tags: readonly string[],
): readonly DocumentNode[] {
  const key = tags.map((tag) => TAG.exec(tag)?.[1]).find((found) => found !== undefined);
  if (key === undefined) return nodes;
  const first = nodes.findIndex(({ kind }) => kind === "heading");
  return nodes.map((node, index) =>
    index === first && node.kind === "heading" ? { ...node, key } : node,
  );
}

/** What an untagged section of a user's own notebook may be named by: its id without the prefix. */
const slugOf = ({ id }: HeadingNode) => id.replace(/^s-/, "");

/**
 * Finds the section of each clause of the checklists, and tells which are not in this report.
 * A section is known by its key, or, without one, by the words of its heading joined by hyphens.
 */
export function linkSections(
  nodes: readonly DocumentNode[],
  file: string,
): { nodes: DocumentNode[]; findings: Finding[] } {
  const headings = nodes.filter((node): node is HeadingNode => node.kind === "heading");
  const findings: Finding[] = [];
  const sectionOf = (key: string, clause: string): SectionLink | null => {
    const heading =
      headings.find((one) => one.key === key) ??
      headings.find((one) => one.key === undefined && slugOf(one) === key);
    if (heading) {
      return { id: heading.id, number: heading.number ?? "", title: plainText(heading.inlines) };
    }
    const known = headings.map((one) => one.key ?? slugOf(one)).join(", ");
    const place = { file, column: "checklist", value: key };
    findings.push(
      finding(place, "warning", "section-not-in-report", {
        message: say`Clause ${clause} is said to be answered in a section that this report does not have.`,
        expected: say`one of ${known}`,
        remedy: say`Correct answered-by in the study, or give the section's cell the tag section-${key}.`,
      }),
    );
    return null;
  };
  return {
    nodes: nodes.map((node) =>
      node.kind === "checklist"
        ? {
            ...node,
            sections: node.items.map(({ sectionKey, clause }) =>
              sectionKey === undefined ? null : sectionOf(sectionKey, clause),
            ),
          }
        : node,
    ),
    findings,
  };
}
