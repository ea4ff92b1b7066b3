/** What a picture file is, and how large. */
export interface PictureSize {
  readonly type: "png" | "jpeg";
  readonly widthPx: number;
  readonly heightPx: number;
  /** How far the picture must be turned clockwise to stand upright, as a camera notes it. */
  readonly turnDegrees: 0 | 90 | 180 | 270;
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/**
 * Kind and size of a PNG or JPEG picture, from its header alone; undefined where it is neither.
 *
 * Source: PNG specification, section 11.2; JPEG (ITU-T T.81), annex B (from memory).
 *
 * @example
 * const header = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 0, 0, 2, 0, 0, 0, 1, 0];
 * pictureSize(new Uint8Array(header)) // => { type: "png", widthPx: 512, heightPx: 256, turnDegrees: 0 }
 */
export function pictureSize(bytes: Uint8Array): PictureSize | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found = PNG.every((byte, at) => bytes[at] === byte) ? pngSize(view) : jpegSize(view);
  return found && found.widthPx > 0 && found.heightPx > 0 ? found : undefined;
}

function pngSize(view: DataView): PictureSize | undefined {
  if (view.byteLength < 24) return undefined;
  const [widthPx, heightPx] = [view.getUint32(16), view.getUint32(20)];
  return { type: "png", widthPx, heightPx, turnDegrees: 0 };
}

/** Markers without a length behind them. */
const isBare = (marker: number) => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);

/** The start of a frame holds the size; 0xC4, 0xC8 and 0xCC are no such start. */
const isFrame = (marker: number) =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

function jpegSize(view: DataView): PictureSize | undefined {
  if (view.byteLength < 4 || view.getUint16(0) !== 0xffd8) return undefined;
  let at = 2;
  let turnDegrees: PictureSize["turnDegrees"] = 0;
  while (at + 9 <= view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    if (marker === 0xff || isBare(marker)) {
      at += marker === 0xff ? 1 : 2;
      continue;
    }
    if (isFrame(marker)) {
      const [heightPx, widthPx] = [view.getUint16(at + 5), view.getUint16(at + 7)];
      return { type: "jpeg", widthPx, heightPx, turnDegrees };
    }
    const length = view.getUint16(at + 2);
    if (marker === 0xe1 && at + 2 + length <= view.byteLength) {
      turnDegrees = notedTurn(new DataView(view.buffer, view.byteOffset + at + 4, length - 2));
    }
    at += 2 + length;
  }
  return undefined;
}

const TURNS: Readonly<Record<number, PictureSize["turnDegrees"]>> = { 3: 180, 6: 90, 8: 270 };

/** The orientation in a camera's notes: entry 0x0112 of the first directory. Source: Exif 2.3 (from memory). */
function notedTurn(notes: DataView): PictureSize["turnDegrees"] {
  // “Exif”, two zeros, then the byte order and the place of the directory.
  if (notes.byteLength < 16 || notes.getUint32(0) !== 0x45786966) return 0;
  const little = notes.getUint16(6) === 0x4949;
  const start = 6 + notes.getUint32(10, little);
  if (start + 2 > notes.byteLength) return 0;
  const entries = notes.getUint16(start, little);
  for (let index = 0; index < entries; index += 1) {
    const entry = start + 2 + 12 * index;
    if (entry + 12 > notes.byteLength) return 0;
    if (notes.getUint16(entry, little) === 0x0112) {
      return TURNS[notes.getUint16(entry + 8, little)] ?? 0;
    }
  }
  return 0;
}
