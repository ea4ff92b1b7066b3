import type { DocumentNode } from "./documentNode.js";
import { plainText } from "./plainText.js";

function slug(text: string): string {
  const words =
    text
      .normalize("NFKD")
      .replace(/\p{M}/gu, "")
      .toLowerCase()
      .match(/[a-z0-9]+/g) ?? [];
  return `s-${words.join("-").slice(0, 60) || "section"}`;
}

/**
 * Numbers sections (1, 1.1, …), figures and tables in reading order and gives headings their
 * ids, in one place, so that HTML and PDF agree. A heading that skips a level is raised to the
 * next one below its parent, because readers of the page's structure rely on that order.
 */
export function numberNodes(nodes: readonly DocumentNode[]): DocumentNode[] {
  let [figures, tables, lastLevel] = [0, 0, 0];
  let counters: number[] = [];
  const used = new Map<string, number>();
  return nodes.map((node): DocumentNode => {
    if (node.kind === "figure") return { ...node, number: ++figures };
    if (node.kind === "table" || node.kind === "keyValues" || node.kind === "checklist") {
      return { ...node, number: ++tables };
    }
    if (node.kind !== "heading") return node;
    const level = Math.min(node.level, lastLevel + 1);
    lastLevel = level;
    counters = counters.slice(0, level);
    counters[level - 1] = (counters[level - 1] ?? 0) + 1;
    const base = slug(plainText(node.inlines));
    const times = (used.get(base) ?? 0) + 1;
    used.set(base, times);
    const id = times === 1 ? base : `${base}--${times}`;
    return { ...node, level, id, number: counters.join(".") };
  });
}
