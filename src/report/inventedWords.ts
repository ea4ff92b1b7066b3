/** What a report on invented data says where it can be seen, and on each page of the PDF. */
export const INVENTED_WORDS = {
  long: "The laboratory data in this report are invented for demonstration. Do not build from it.",
  short: "Invented demonstration data: do not build from this report.",
} as const;
