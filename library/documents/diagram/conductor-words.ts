import type { Protection, Run } from "../../model/run.ts";
import { deviceKind, sizeOfRunInWords } from "../../rules/fixes/sized-fix.ts";
import { formatExact, withUnit } from "../../rules/wording/format-number.ts";
import { lengthInWords } from "../../rules/wording/lengths.ts";

/** A current that divides by a length that is not known. */
export type LineCurrent = number | "not known" | undefined;

/** "6 AWG · 30 ft", with a current also "12.4 A"; "6 AWG · length not known". */
export function conductorData(run: Run, lengthM: number | undefined, currentA: LineCurrent): string {
  const current =
    currentA === "not known"
      ? ["current not known"]
      : currentA === undefined || !Number.isFinite(currentA)
        ? []
        : [withUnit(Math.abs(currentA), "A")];
  return [sizeOfRunInWords(run), lengthInWords(run, lengthM), ...current].join(" · ");
}

/** "fuse 50 A, ISO 8820-3 blade". */
export function protectionInWords(protection: Protection): string {
  const family = protection.family && protection.family !== "circuit breaker" ? `, ${protection.family}` : "";
  return `${deviceKind(protection)} ${formatExact(protection.ratingA)} A${family}`;
}
