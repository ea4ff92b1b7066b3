const RIGHT_TO_LEFT =
  /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/** Attribute for an element that holds a user's text: a text with right-to-left letters decides its own direction. */
export function textDir(text: string): string {
  return RIGHT_TO_LEFT.test(text) ? ' dir="auto"' : "";
}
