import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import type { DocumentNode, HeadingNode, SectionLink } from "./documentNode.js";
import { plainText } from "./plainText.js";

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
    findings.push({
      ...{ severity: "warning", code: "section-not-in-report", file, column: "checklist" },
      value: key,
      message: say`Clause ${clause} is said to be answered in a section that this report does not have.`,
      expected: say`one of ${headings.map((one) => one.key ?? slugOf(one)).join(", ")}`,
      wayOut: say`Correct answered-by in the study, or give the section's cell the tag section-${key}.`,
    });
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
