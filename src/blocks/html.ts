const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text made safe for HTML, between tags as well as in a quoted attribute. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] as string);
}

const LETTER =
  "[\\p{Script=Arabic}\\p{Script=Hebrew}\\p{Script=Syriac}\\p{Script=Thaana}\\p{Script=Nko}]";
const RIGHT_TO_LEFT = new RegExp(LETTER, "u");
const FIRST_LETTER = new RegExp(`^\\P{L}*${LETTER}`, "u");

/** Attribute for an element that holds a user's text: a text with right-to-left letters decides its own direction. */
export function textDir(text: string): string {
  return RIGHT_TO_LEFT.test(text) ? ' dir="auto"' : "";
}

/** Whether the first letter of a text is of a script that runs from right to left. */
export function startsRightToLeft(text: string): boolean {
  return FIRST_LETTER.test(text);
}
