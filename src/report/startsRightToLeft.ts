const FIRST_LETTER =
  /^\P{L}*[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/** Whether the first letter of a text is of a script that runs from right to left. */
export function startsRightToLeft(text: string): boolean {
  return FIRST_LETTER.test(text);
}
