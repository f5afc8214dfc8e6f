import { metresPerFoot, metresPerInch } from "../length-limits.ts";
import type { Point, Rectangle } from "./layout.ts";

type Written = Readonly<Record<string, unknown>>;

/** A length that a plan states as `leftMm` or `leftIn`, mm; undefined if it states neither. */
export function millimetres(written: object | undefined, name: string): number | undefined {
  const { [`${name}Mm`]: mm, [`${name}In`]: inches } = (written ?? {}) as Written;
  if (typeof mm === "number") return mm;
  return typeof inches === "number" ? inches * metresPerInch * 1_000 : undefined;
}

/** The same for `lengthM` or `lengthFt`, mm. */
export function longMillimetres(written: object | undefined, name: string): number | undefined {
  const { [`${name}M`]: metres, [`${name}Ft`]: feet } = (written ?? {}) as Written;
  if (typeof metres === "number") return metres * 1_000;
  return typeof feet === "number" ? feet * metresPerFoot * 1_000 : undefined;
}

export function pointOf(written: object | undefined): Point | undefined {
  const x = millimetres(written, "left");
  const y = millimetres(written, "top");
  return x === undefined || y === undefined ? undefined : { x, y };
}

export function sizeOf(
  written: object | undefined,
): { readonly width: number; readonly height: number; readonly depth?: number } | undefined {
  const width = millimetres(written, "width");
  const height = millimetres(written, "height");
  const depth = millimetres(written, "depth");
  if (width === undefined || height === undefined) return undefined;
  return { width, height, ...(depth !== undefined && { depth }) };
}

export function rectangleOf(written: object): Rectangle | undefined {
  const [point, size] = [pointOf(written), sizeOf(written)];
  return point && size && { ...point, width: size.width, height: size.height };
}
