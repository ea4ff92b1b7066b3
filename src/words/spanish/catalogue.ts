/** Every sentence in Spanish, by its English text. */
export const SPANISH: Readonly<Record<string, string>> = {};
