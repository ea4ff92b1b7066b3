import { say, type Text } from "../../words/message.js";

/** The files of an archive, or a sentence that says why there are none. */
type Archive =
  | { readonly files: ReadonlyMap<string, Uint8Array>; readonly problem?: undefined }
  | { readonly files?: undefined; readonly problem: Text };

/** More parts than this no workbook of readings has. */
const MAX_PARTS = 2000;
/** What all parts may be together once unpacked: a sheet of 100,000 cells has about half of it. */
const MAX_BYTES = 16 * 1024 * 1024;

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
const STORED = 0;
const DEFLATED = 8;

/** A part as the archive's list names it. */
interface Entry {
  readonly name: string;
  readonly flags: number;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly unpacked: number;
  readonly offset: number;
}

/**
 * Unpacks the wanted parts of a ZIP archive: each must have the length and the checksum that the archive
 * states, and all together must stay within a limit, whatever the archive claims. So a damaged file is told
 * as damaged and never read as another table, and one that unpacks without end is stopped.
 *
 * Source: ZIP file format specification (PKWARE APPNOTE), from memory.
 */
export async function unzip(
  bytes: Uint8Array,
  isWanted: (name: string) => boolean,
): Promise<Archive> {
  const damaged: Archive = { problem: say`The file is damaged, or was not saved to its end.` };
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entries = readEntries(view, bytes);
  if (!entries) return damaged;
  const files = new Map<string, Uint8Array>();
  let left = MAX_BYTES;
  for (const entry of entries) {
    if (!isWanted(entry.name)) continue;
    if (entry.flags & 1) return { problem: say`The workbook is protected by a password.` };
    if (entry.unpacked > left) return tooLarge();
    const packed = partOf(view, bytes, entry);
    const content = packed && (await inflate(packed, entry.method, left));
    if (content === "too large") return tooLarge();
    if (!content || content.length !== entry.unpacked || crc32(content) !== entry.crc) {
      return damaged;
    }
    left -= content.length;
    files.set(entry.name, content);
  }
  return { files };
}

function tooLarge(): Archive {
  return { problem: say`Unpacked, the workbook has more than ${MAX_BYTES} bytes.` };
}

/** The list at the archive's end; none where there is no whole one. */
function readEntries(view: DataView, bytes: Uint8Array): Entry[] | undefined {
  const end = endOf(view);
  if (end === undefined) return undefined;
  const count = view.getUint16(end + 10, true);
  if (count > MAX_PARTS) return undefined;
  const entries: Entry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let index = 0; index < count; index++) {
    if (at + 46 > view.byteLength || view.getUint32(at, true) !== ENTRY) return undefined;
    const nameLength = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
    entries.push({
      name,
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      unpacked: view.getUint32(at + 24, true),
      offset: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/** Where the end record stands: behind it may be a comment of at most 65,535 bytes. */
function endOf(view: DataView): number | undefined {
  const last = view.byteLength - 22;
  for (let at = last; at >= Math.max(0, last - 65_535); at--) {
    if (view.getUint32(at, true) === END) return at;
  }
  return undefined;
}

function partOf(view: DataView, bytes: Uint8Array, entry: Entry): Uint8Array | undefined {
  const { offset, packed } = entry;
  if (offset + 30 > view.byteLength || view.getUint32(offset, true) !== LOCAL) return undefined;
  const start = offset + 30 + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  return start + packed > view.byteLength ? undefined : bytes.subarray(start, start + packed);
}

async function inflate(
  packed: Uint8Array,
  method: number,
  limit: number,
): Promise<Uint8Array | "too large" | undefined> {
  if (method === STORED) return packed;
  if (method !== DEFLATED) return undefined;
  const chunks: Uint8Array[] = [];
  let length = 0;
  try {
    const stream = new Blob([Uint8Array.from(packed)])
      .stream()
      .pipeThrough(new DecompressionStream("deflate-raw"));
    for await (const chunk of stream) {
      length += chunk.length;
      if (length > limit) return "too large";
      chunks.push(chunk);
    }
  } catch {
    return undefined;
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** Names are UTF-8. */
const UTF8_NAMES = 0x0800;
/** The first day that an archive can tell: the same files give the same bytes whenever they are packed. */
const FIRST_DAY = 0x21;

/**
 * An archive of the same files without any packing: for a reader that is not to unpack by itself, and for a
 * study folder to be saved in one file.
 *
 * Source: ZIP file format specification (PKWARE APPNOTE), from memory.
 */
export function stored(files: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const names = [...files.keys()].map((name) => new TextEncoder().encode(name));
  const contents = [...files.values()];
  const checksums = contents.map(crc32);
  const size = names.reduce(
    (sum, name, index) => sum + 30 + 46 + 2 * name.length + contents[index].length,
    22,
  );
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  const offsets: number[] = [];
  let at = 0;
  /** What stands before a file and again in the list: version 2.0, the day, the checksum, the lengths. */
  const describe = (from: number, index: number) => {
    const { length } = contents[index];
    view.setUint16(from, 20, true);
    view.setUint16(from + 2, UTF8_NAMES, true);
    view.setUint16(from + 8, FIRST_DAY, true);
    view.setUint32(from + 10, checksums[index], true);
    view.setUint32(from + 14, length, true);
    view.setUint32(from + 18, length, true);
    view.setUint16(from + 22, names[index].length, true);
  };
  names.forEach((name, index) => {
    const { length } = contents[index];
    offsets.push(at);
    view.setUint32(at, LOCAL, true);
    describe(at + 4, index);
    bytes.set(name, at + 30);
    bytes.set(contents[index], at + 30 + name.length);
    at += 30 + name.length + length;
  });
  const list = at;
  names.forEach((name, index) => {
    view.setUint32(at, ENTRY, true);
    view.setUint16(at + 4, 20, true);
    describe(at + 6, index);
    view.setUint32(at + 42, offsets[index], true);
    bytes.set(name, at + 46);
    at += 46 + name.length;
  });
  view.setUint32(at, END, true);
  view.setUint16(at + 8, names.length, true);
  view.setUint16(at + 10, names.length, true);
  view.setUint32(at + 12, at - list, true);
  view.setUint32(at + 16, list, true);
  return bytes;
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** The checksum of ZIP archives. Source: ISO 3309, from memory; `crc32("123456789")` is 0xcbf43926. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = CRC_TABLE[(crc ^ byte) & 0xff] ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
