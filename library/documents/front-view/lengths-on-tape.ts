import { formatExact } from "../../rules/wording/format-number.ts";

export type TapeUnit = "mm" | "in";

const mmPerIn = 25.4;

/**
 * A length as a tape measure shows it, without its unit: mm to a tenth, inches as a fraction down to sixteenths, or in decimals if it
 * is none.
 */
export function lengthOnTape(mm: number, unit: TapeUnit): string {
  if (unit === "mm") return formatExact(Math.round(mm * 10) / 10);
  const sixteenths = (mm / mmPerIn) * 16;
  const rounded = Math.round(sixteenths);
  if (Math.abs(sixteenths - rounded) > 1e-6) return formatExact(Math.round((mm / mmPerIn) * 100) / 100);
  const whole = Math.floor(rounded / 16);
  let [above, below] = [rounded % 16, 16];
  if (above === 0) return formatExact(whole);
  while (above % 2 === 0) [above, below] = [above / 2, below / 2];
  return `${whole === 0 ? "" : `${formatExact(whole)} `}${above}/${below}`;
}

/** "350 × 190" */
export function sizeOnTape(
  { width, height }: { readonly width: number; readonly height: number },
  unit: TapeUnit,
): string {
  return `${lengthOnTape(width, unit)} × ${lengthOnTape(height, unit)}`;
}
