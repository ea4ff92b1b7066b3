import type { SvgBox } from "./svgTextBox.js";

/** Plane map (x, y) → (a x + c y + e, b x + d y + f), as SVG's `matrix(a b c d e f)`. */
export type SvgMatrix = readonly [number, number, number, number, number, number];

const IDENTITY: SvgMatrix = [1, 0, 0, 1, 0, 0];

function times(m: SvgMatrix, n: SvgMatrix): SvgMatrix {
  return [
    m[0] * n[0] + m[2] * n[1],
    m[1] * n[0] + m[3] * n[1],
    m[0] * n[2] + m[2] * n[3],
    m[1] * n[2] + m[3] * n[3],
    m[0] * n[4] + m[2] * n[5] + m[4],
    m[1] * n[4] + m[3] * n[5] + m[5],
  ];
}

function single(name: string, values: readonly number[]): SvgMatrix {
  const [a = 0, b = 0, c = 0] = values;
  if (name === "translate") return [1, 0, 0, 1, a, b];
  if (name === "scale") return [a, 0, 0, values.length > 1 ? b : a, 0, 0];
  if (name === "matrix" && values.length === 6) return values as unknown as SvgMatrix;
  if (name !== "rotate") return IDENTITY;
  const [cos, sin] = [Math.cos((a * Math.PI) / 180), Math.sin((a * Math.PI) / 180)];
  return [cos, sin, -sin, cos, b - cos * b + sin * c, c - sin * b - cos * c];
}

/** Reads an SVG `transform` attribute (SVG 1.1, clause 7.6; skews are not used by plotly). */
export function svgTransform(attribute: string | null): SvgMatrix {
  let matrix = IDENTITY;
  for (const [, name, values] of (attribute ?? "").matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const numbers = values!.split(/[\s,]+/).filter((part) => part !== "");
    matrix = times(matrix, single(name!, numbers.map(Number)));
  }
  return matrix;
}

/** Upright box around a box after a transform. */
export function transformedBox(box: SvgBox, matrix: SvgMatrix): SvgBox {
  const corners = [
    [box.x, box.y],
    [box.x + box.width, box.y],
    [box.x, box.y + box.height],
    [box.x + box.width, box.y + box.height],
  ] as const;
  const xs = corners.map(([x, y]) => matrix[0] * x + matrix[2] * y + matrix[4]);
  const ys = corners.map(([x, y]) => matrix[1] * x + matrix[3] * y + matrix[5]);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
