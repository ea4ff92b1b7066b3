import { describe, expect, it } from "vitest";
import { pictureSize } from "../../src/quantities/pictureSize.js";

const words = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
/** A camera's notes with an orientation, in either byte order. */
function notes(orientation: number, little: boolean): number[] {
  const pair = (value: number) => (little ? [value, 0] : [0, value]);
  const four = (value: number) => (little ? [value, 0, 0, 0] : [0, 0, 0, value]);
  const tag = little ? [0x12, 0x01] : [0x01, 0x12];
  const body = [
    ...words("Exif"),
    0,
    0,
    ...words(little ? "II" : "MM"),
    ...pair(42),
    ...four(8),
    // Two entries: one of no matter, then the orientation.
    ...pair(2),
    ...pair(1),
    ...pair(3),
    ...four(1),
    ...pair(9),
    0,
    0,
    ...tag,
    ...pair(3),
    ...four(1),
    ...pair(orientation),
    0,
    0,
  ];
  return [0xff, 0xe1, 0, body.length + 2, ...body];
}
const jpeg = (...parts: readonly number[][]) => new Uint8Array([0xff, 0xd8, ...parts.flat()]);
/** 300 dots wide, 200 high. */
const FRAME = [0xff, 0xc2, 0, 11, 8, 0, 200, 1, 44, 1, 0, 0, 0];
/** A table of codes, whose marker is like that of a frame, and a comment before it. */
const TABLE = [0xff, 0xc4, 0, 4, 9, 9];

describe("pictureSize", () => {
  it("finds the frame of a JPEG behind other parts", () => {
    const size = { type: "jpeg", widthPx: 300, heightPx: 200, turnDegrees: 0 };
    expect(pictureSize(jpeg(FRAME))).toEqual(size);
    expect(pictureSize(jpeg(TABLE, [0xff], [0xff, 0x01], FRAME))).toEqual(size);
  });

  it.each([
    [1, 0],
    [3, 180],
    [6, 90],
    [8, 270],
    [2, 0],
  ])("takes the camera's note %i as a turn by %i degrees", (orientation, turnDegrees) => {
    for (const little of [true, false]) {
      expect(pictureSize(jpeg(notes(orientation, little), FRAME))?.turnDegrees).toBe(turnDegrees);
    }
  });

  it("knows nothing of what is no picture, or is cut short", () => {
    const png = [0x89, ...words("PNG"), 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, ...words("IHDR")];
    expect(pictureSize(new Uint8Array(png))).toBeUndefined();
    expect(pictureSize(new Uint8Array([...png, 0, 0, 0, 0, 0, 0, 0, 9]))).toBeUndefined();
    expect(pictureSize(jpeg(TABLE))).toBeUndefined();
    expect(pictureSize(jpeg(notes(6, true).slice(0, 20)))).toBeUndefined();
    expect(pictureSize(new Uint8Array(words("block,texture")))).toBeUndefined();
    expect(pictureSize(new Uint8Array())).toBeUndefined();
  });
});
