import type { Protection } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { clearingTime } from "../standards/protection-rules.ts";
import { gatesFor, openingTime } from "./opening-time.ts";

/** A device that opens too late at a fault current, or need not open at all. */
export interface SlowClearing {
  /** Its maximum opening time, s; undefined: it need not open at all. */
  readonly openingS?: number;
  /** The gates that show this; undefined if the current is not even above the rating, which opens no device. */
  readonly source: Citation | undefined;
}

/**
 * Undefined if it opens in time, or if this is unknown. The gates of UL 248-15 end at an hour or two, and breakers and some
 * fuses have none. These are not reported above their rating or, if they have gates, above the current at which they need not
 * open.
 */
export function slowClearing(device: Device, currentA: number): SlowClearing | undefined {
  if (currentA <= device.ratingA) return { source: undefined };
  const time = openingTime(device, currentA);
  if (!time.judged) return time.why === "need-not-open" ? { source: time.source } : undefined;
  if (time.openingS <= clearingTime.maxS || !gatesGoFarEnough(device)) return undefined;
  return { openingS: time.openingS, source: time.source };
}

/** Whether the family's gates guarantee that it opens in time. */
export function opensInTime(device: Device, currentA: number): boolean {
  const time = openingTime(device, currentA);
  return time.judged && time.openingS <= clearingTime.maxS;
}

type Device = Pick<Protection, "ratingA" | "family">;

function gatesGoFarEnough(device: Device): boolean {
  return (gatesFor(device)?.gates.at(-1)?.maxS ?? Number.POSITIVE_INFINITY) <= clearingTime.maxS;
}
