import { type DistanceLimit, protectionDistanceLimit } from "../../analysis/protection-distance.ts";
import { withoutDust } from "../../analysis/rounding-dust.ts";
import { metresPerInch } from "../../model/length-limits.ts";
import type { NetworkConductor } from "../../model/network.ts";
import { isDevice } from "../../model/part-roles.ts";
import type { Run } from "../../model/run.ts";
import { bareFromBattery, protectionDistances } from "../../standards/protection-rules.ts";
import type { ProposedFix } from "../finding.ts";
import { perDevice, statedWithUnit, theDevice } from "../fixes/judged-devices.ts";
import { placedInWords, placedPart } from "../fixes/placed-device.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork, within } from "../rule.ts";
import { exceeds, formatExact } from "../wording/format-number.ts";
import { atConductor, atStart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

const { bare, sheathed, fromBattery } = protectionDistances;

export const distance = defineRule<Values>({
  id: "protection/distance",
  title: "Protection too far from its source",
  formerTitles: ["Fuse or breaker far from its source"],
  severity: "warning",
  why: "The stretch between the source and its fuse has no protection: if it chafes through, it burns.",
  sources: [bare.source, sheathed.source, fromBattery.source, bareFromBattery.source],
  fixable: true,
  acceptable: true,
  // Needs the distance limit for the circuit's run and its start. A distance not stated is not judged. Information if practice
  // alone asks for less.
  check: (plan) => [
    ...perDevice(plan, ({ run, device, protection, properties }) => {
      if (!run || run.circuit.crankingFeed) return [];
      const given = statedDistance(protection.distanceGiven);
      if (!given) return [];
      const found = judged(run.circuit, device.end === "protect" ? "near" : "far", given);
      return found.map(({ values, ...rest }) => ({
        ...rest,
        at: within(properties, given.property),
        values: { device: theDevice(device), ...values },
      }));
    }),
    ...inNetwork(plan, onLeads),
  ],
  message({ device, distance, limit, unit, run, sheathHelps, source, lawful }) {
    // Exact: 7 in are 177.8 mm, and a fuse at 178 mm would be too far.
    const most = `${formatExact(limit)} ${unit}`;
    const way = sheathHelps ? ", or run the conductor in a sheath up to it" : "";
    const allowed = lawful ? `; ${lawful.source} allows ${formatExact(lawful.limit)} ${unit}` : "";
    return `${device} is ${statedWithUnit(distance, unit)} from its source; the limit ${runInWords[run]} is ${most} (${source}${allowed}): move it nearer${way}.`;
  },
});

interface Values {
  readonly device: string;
  /** Along the conductor, in the plan's unit, as is the limit. */
  readonly distance: number;
  readonly limit: number;
  readonly unit: "in" | "mm";
  readonly run: "bare" | "sheathed" | "fromBattery" | "bareFromBattery";
  /** Near enough for a conductor in a sheath. */
  readonly sheathHelps: boolean;
  readonly source: string;
  /** The greater distance that the law allows, if the limit is only advised. */
  readonly lawful?: { readonly limit: number; readonly source: string };
}

const runInWords: Record<Values["run"], string> = {
  bare: "without a sheath",
  sheathed: "in a sheath",
  fromBattery: "from a battery",
  bareFromBattery: "from a battery without a sheath",
};

/** A distance at an end of a run, judged by the law, then by practice. */
function judged(
  circuit: Run,
  end: "near" | "far",
  { distance, unit }: Pick<StatedDistance, "distance" | "unit">,
): { readonly values: Omit<Values, "device">; readonly severity?: "info"; readonly fixes: ProposedFix[] }[] {
  const limitOf = ({ maxIn }: Pick<DistanceLimit, "maxIn">) => (unit === "in" ? maxIn : maxIn * mmPerInch);
  const law = protectionDistanceLimit(circuit, end);
  const isAgainstLaw = exceeds(distance, limitOf(law));
  const limit = isAgainstLaw ? law : law.advised;
  if (!limit || !exceeds(distance, limitOf(limit))) return [];
  const { source } = limit;
  const sheathHelps = isAgainstLaw
    ? source === bare.source && !exceeds(distance, limitOf(sheathed))
    : limit === law.advised;
  return [
    {
      values: {
        ...{ distance, unit, sheathHelps },
        limit: limitOf(limit),
        run: runOf(limit),
        source: sourceInWords(source),
        ...(!isAgainstLaw && { lawful: { limit: limitOf(law), source: sourceInWords(law.source) } }),
      },
      ...(!isAgainstLaw && { severity: "info" }),
      fixes: sheathHelps ? [sheathe(circuit)] : [],
    },
  ];
}

function runOf({ source }: Pick<DistanceLimit, "source">): Values["run"] {
  switch (source) {
    case bare.source:
      return "bare";
    case sheathed.source:
      return "sheathed";
    case fromBattery.source:
      return "fromBattery";
    default:
      return "bareFromBattery";
  }
}

/**
 * The conductors that lead from a battery to a device that is a part of its own: their length is its distance. One that is longer than the
 * law allows is reported by protection/unprotected-path.
 */
function onLeads({ network, result }: JudgedNetwork): Found<Values>[] {
  const positives = new Set(
    network.parts.flatMap((part) => (part.kind === "battery" ? [part.terminals.positive] : [])),
  );
  const deviceAt = (terminal: number) => {
    const part = network.parts[network.terminals[terminal]!.part]!;
    return isDevice(part) ? placedPart(network, part) : undefined;
  };
  const found = (conductor: NetworkConductor, end: "near" | "far"): Found<Values>[] => {
    const placed = deviceAt(end === "near" ? conductor.to : conductor.from);
    if (!placed) return [];
    const { run, lengthM } = conductor;
    if (lengthM === undefined) return [];
    const given =
      run.lengthUnit === "ft"
        ? ({ distance: withoutDust(lengthM / metresPerInch), unit: "in" } as const)
        : ({ distance: withoutDust(lengthM * 1000), unit: "mm" } as const);
    const [property = "lengthM"] = Object.keys(run.lengthsGiven);
    return judged(run, end, given)
      .filter(({ severity }) => severity === "info")
      .map(({ values, ...rest }) => ({
        ...rest,
        subject: conductor.name,
        at: atConductor(conductor, property),
        values: { device: atStart(placedInWords(placed)), ...values },
      }));
  };
  return network.conductors.flatMap((conductor, index) => {
    if (conductor.near || conductor.far || result.topology.crankingFeeds.has(index)) return [];
    if (positives.has(conductor.from)) return found(conductor, "near");
    return positives.has(conductor.to) ? found(conductor, "far") : [];
  });
}

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
