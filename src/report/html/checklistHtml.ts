import { escapeHtml } from "../../notebook/escapeHtml.js";
import { checklistHeaders } from "../../tables/checklistTable.js";
import { say } from "../../words/say.js";
import type { ChecklistNode } from "../documentNode.js";

/** A clause checklist: each answered clause links to its section, open ones are marked. */
export function checklistHtml({ number, caption, items, sections = [] }: ChecklistNode): string {
  const label = number === undefined ? caption : say`Table ${number}`;
  const mark = number === undefined ? "" : `<span class="label">${escapeHtml(label)}</span> `;
  const id = number === undefined ? "" : ` id="table-${number}"`;
  const head = checklistHeaders().map((header) => `<th scope="col">${escapeHtml(header)}</th>`);
  const rows = items.map(({ clause, requirement, remark, sectionKey }, index) => {
    const section = sections[index];
    const answer = section
      ? `<a href="#${section.id}">${escapeHtml(`${section.number} ${section.title}`.trim())}</a>`
      : `<strong>${escapeHtml(sectionKey === undefined ? say`open` : say`${sectionKey}: not in this report`)}</strong>`;
    return `<tr><th scope="row">${escapeHtml(clause)}</th><td>${escapeHtml(requirement)}</td><td>${answer}</td><td>${escapeHtml(remark)}</td></tr>`;
  });
  return `<div class="scroll" role="region" tabindex="0" aria-label="${escapeHtml(label)}"><table${id}><caption><span>${mark}${escapeHtml(caption)}</span></caption>
<thead><tr>${head.join("")}</tr></thead>
<tbody>
${rows.join("\n")}
</tbody></table></div>`;
}
