import { protectionDistanceLimit } from "../../analysis/protection-distance.ts";
import type { Run } from "../../model/run.ts";
import { protectionDistances } from "../../standards/protection-rules.ts";
import type { ProposedFix } from "../finding.ts";
import { type Device, perDevice, statedWithUnit, theDevice } from "../fixes/judged-devices.ts";
import { defineRule, within } from "../rule.ts";
import { exceeds, formatExact } from "../wording/format-number.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

const { bare, sheathed, fromBattery } = protectionDistances;

export const distance = defineRule<Values>({
  id: "protection/distance",
  title: "Protection too far from its source",
  formerTitles: ["Fuse or breaker far from its source"],
  severity: "warning",
  why: "The stretch between the source and its fuse has no protection: if it chafes through, it burns.",
  sources: [bare.source, sheathed.source, fromBattery.source],
  fixable: true,
  acceptable: true,
  // Needs the distance limit for the circuit's run and its start. A distance not stated is not judged.
  check: (plan) =>
    perDevice(plan, ({ run, device, protection, properties }) => {
      // A part of its own has no distance: the length of its lead is judged by protection/unprotected-path.
      if (!run || run.circuit.crankingFeed) return [];
      const { circuit } = run;
      const given = statedDistance(protection.distanceGiven);
      if (!given) return [];
      const limit = protectionDistanceLimit(circuit, device.end === "protect" ? "near" : "far");
      const limitHere = given.unit === "in" ? limit.maxIn : limit.maxIn * mmPerInch;
      if (!exceeds(given.distance, limitHere)) return [];
      const sheathHelps =
        limit.maxIn === bare.maxIn && !exceeds(given.distance / limitHere, sheathed.maxIn / bare.maxIn);
      const values: Values = {
        device,
        distance: given.distance,
        limit: limitHere,
        unit: given.unit,
        run: limit.source === fromBattery.source ? "fromBattery" : circuit.sheathed ? "sheathed" : "bare",
        sheathHelps,
        source: sourceInWords(limit.source),
      };
      const at = within(properties, given.property);
      return [{ at, values, fixes: sheathHelps ? [sheathe(circuit)] : [] }];
    }),
  message({ device, distance, limit, unit, run, sheathHelps, source }) {
    // Exact: 7 in are 177.8 mm, and a fuse at 178 mm would be too far.
    const most = `${formatExact(limit)} ${unit}`;
    const way = sheathHelps ? ", or run the conductor in a sheath up to it" : "";
    return `${theDevice(device)} is ${statedWithUnit(distance, unit)} from its source; the limit ${runInWords[run]} is ${most} (${source}): move it nearer${way}.`;
  },
});

interface Values {
  readonly device: Device;
  /** Along the conductor, in the plan's unit, as is the limit. */
  readonly distance: number;
  readonly limit: number;
  readonly unit: "in" | "mm";
  readonly run: "bare" | "sheathed" | "fromBattery";
  /** Near enough for a conductor in a sheath. */
  readonly sheathHelps: boolean;
  readonly source: string;
}

const runInWords: Record<Values["run"], string> = {
  bare: "without a sheath",
  sheathed: "in a sheath",
  fromBattery: "from a battery",
};

/** Exact by definition. */
const mmPerInch = 25.4;

interface StatedDistance {
  readonly property: "distanceIn" | "distanceMm";
  readonly distance: number;
  readonly unit: "in" | "mm";
}

function statedDistance(
  given: Partial<Record<StatedDistance["property"], number>> = {},
): StatedDistance | null {
  const { distanceIn, distanceMm } = given;
  if (distanceIn !== undefined) return { property: "distanceIn", distance: distanceIn, unit: "in" };
  if (distanceMm !== undefined) return { property: "distanceMm", distance: distanceMm, unit: "mm" };
  return null;
}

/**
 * A suggestion, never a repair: the plan would only state the sheath; it must then really be there. No fix is proposed for the
 * distance itself, which follows from the positions of the parts.
 */
function sheathe(circuit: Run): ProposedFix {
  return {
    title: "Run it in a sheath",
    kind: "suggestion",
    changes: [{ do: "set", record: circuit.record, path: ["sheathed"], value: true }],
  };
}
