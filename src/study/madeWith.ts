/**
 * Name and version of this package, printed in every result and report; written here and not read from
 * package.json, because a browser has no files (a test holds the two together).
 */
export const MADE_WITH = "loambook 0.1.0";
