export const README_LINE: RegExp;
export function quoteOf(page: string): string;
