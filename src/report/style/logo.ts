import { crc32, inflateSync } from "node:zlib";
import { say, type Text } from "../../words/message.js";
import { cleanSvg } from "../cleanSvg.js";
import type { ReportLogo } from "../reportMeta.js";
import { type OpenedStyle, styleFinding } from "./styleFile.js";

/** It stands in the HTML file as text, so a photograph would make every report heavy. */
const MAX_BYTES = 1_000_000;
const MAX_SIDE_PX = 4000;
/** About 120 dots an inch at the size a logo is set: common practice, no source. */
const SMALLEST_HEIGHT_PX = 80;
const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

function readPng(file: string, bytes: Uint8Array, alt: string): OpenedStyle {
  // signature, then the header chunk with width and height: PNG specification, section 11.2.1 (from memory)
  const header = String.fromCharCode(...bytes.slice(12, 16));
  if (PNG_SIGNATURE.some((byte, at) => bytes[at] !== byte) || header !== "IHDR") {
    return refused(file, say`This is not a PNG picture.`);
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (!isWholePng(bytes, view)) {
    return refused(file, say`The picture is damaged, or was not saved to its end.`);
  }
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  if (width === 0 || height === 0 || Math.max(width, height) > MAX_SIDE_PX) {
    return refused(file, say`The picture has ${width} by ${height} dots.`);
  }
  const logo: ReportLogo = { type: "png", bytes, alt };
  if (height >= SMALLEST_HEIGHT_PX) return { style: { logo }, findings: [] };
  const words = {
    message: say`The picture is only ${height} dots high and will look coarse in print.`,
    expected: say`at least ${SMALLEST_HEIGHT_PX} dots, or an SVG drawing`,
    remedy: say`Save it larger, or as SVG.`,
  };
  const coarse = styleFinding("logo", file, "note", "logo-coarse", words);
  return { style: { logo }, findings: [coarse] };
}

/**
 * Whether every chunk is there with its checksum, and the picture data unpack to something. Source: PNG
 * specification, sections 5.3 and 11.2, from memory.
 */
function isWholePng(bytes: Uint8Array, view: DataView): boolean {
  const data: Uint8Array[] = [];
  let at = PNG_SIGNATURE.length;
  while (at + 12 <= bytes.length) {
    const length = view.getUint32(at);
    const end = at + 8 + length;
    if (end + 4 > bytes.length) return false;
    if (crc32(bytes.subarray(at + 4, end)) !== view.getUint32(end)) return false;
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (type === "IDAT") data.push(bytes.subarray(at + 8, end));
    if (type === "IEND") return unpacks(data);
    at = end + 4;
  }
  return false;
}

function unpacks(data: readonly Uint8Array[]): boolean {
  try {
    // Sixteen bits of four colours a dot, and a filter byte a line.
    const maxOutputLength = MAX_SIDE_PX * (8 * MAX_SIDE_PX + 1);
    return inflateSync(Buffer.concat(data), { maxOutputLength }).length > 0;
  } catch {
    return false;
  }
}

function refused(file: string, message: Text): OpenedStyle {
  const words = {
    message,
    expected: say`a well-formed SVG with a size, or a PNG of at most ${MAX_SIDE_PX} dots a side and ${MAX_BYTES / 1e6} MB`,
    remedy: say`Save the logo again in one of these forms.`,
  };
  return { style: {}, findings: [styleFinding("logo", file, "error", "logo-unreadable", words)] };
}

/** Reads a logo: an SVG is cleaned of all that could run or be fetched, and what was taken out is told. */
export function readLogo(file: string, bytes: Uint8Array, alt: string): OpenedStyle {
  if (bytes.length > MAX_BYTES) {
    return refused(file, say`The file has ${Math.ceil(bytes.length / 1000)} kB.`);
  }
  if (/\.png$/i.test(file)) return readPng(file, bytes, alt);
  if (!/\.svg$/i.test(file)) return refused(file, say`This kind of picture is not read.`);
  const cleaned = cleanSvg(new TextDecoder().decode(bytes), "logo-", alt);
  if (cleaned === undefined) return refused(file, say`This is not a well-formed SVG drawing.`);
  const { svg, removed } = cleaned;
  const root = /<svg[^>]*>/.exec(svg)?.[0] ?? "";
  if (!/\sviewBox=/.test(root) && !(/\swidth="[\d.]/.test(root) && /\sheight="[\d.]/.test(root))) {
    return refused(file, say`The drawing states no size.`);
  }
  const logo: ReportLogo = { type: "svg", svg, alt };
  if (removed.size === 0) return { style: { logo }, findings: [] };
  const words = {
    message: say`Parts of the drawing that could run or fetch something, or that style it from a sheet, were taken out: ${[...removed].sort().join(", ")}.`,
    expected: say`an SVG of plain shapes with their colours as attributes`,
    remedy: say`Look at the logo in the report; where it changed, save it as plain SVG with presentation attributes.`,
  };
  const changed = styleFinding("logo", file, "warning", "logo-cleaned", words);
  return { style: { logo }, findings: [changed] };
}
