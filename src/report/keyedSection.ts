import type { DocumentNode } from "./documentNode.js";

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
