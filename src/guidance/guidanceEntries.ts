import { BLOCK_ENTRIES } from "./entries/blockEntries.js";
import { MORE_READ_ENTRIES } from "./entries/moreReadEntries.js";
import { MORE_REMEMBERED_ENTRIES } from "./entries/moreRememberedEntries.js";
import { READ_ENTRIES } from "./entries/readEntries.js";
import { REMEMBERED_ENTRIES } from "./entries/rememberedEntries.js";
import type { GuidanceEntry } from "./guidanceEntry.js";

/**
 * Published recommendations about soils for rammed and cement-stabilised earth, those that were read
 * first, and after them some for compressed blocks. No complete two-sided grading curve was read for any of them.
 *
 * @example
 * GUIDANCE_ENTRIES.find(({ id }) => id === "walker-2005").basis // => "memory"
 */
export const GUIDANCE_ENTRIES: readonly GuidanceEntry[] = [
  ...READ_ENTRIES,
  ...MORE_READ_ENTRIES,
  ...REMEMBERED_ENTRIES,
  ...MORE_REMEMBERED_ENTRIES,
  ...BLOCK_ENTRIES,
];
