import type { NetworkResult, SupplyPath } from "../../analysis/network-result.ts";
import { repairSizing } from "../../analysis/repair-sizing.ts";
import { isAccepted } from "../../analysis/sizing.ts";
import { allowedOn, dropWith, placeOfPath } from "../../analysis/supply-path-drop.ts";
import { tightestTerminal } from "../../analysis/terminal-size.ts";
import { meetsDropLimit } from "../../analysis/voltage-drop.ts";
import type { NetworkConductor } from "../../model/network.ts";
import type { Conductor, Run } from "../../model/run.ts";
import { strandFactor, temperatureCoefficient } from "../../standards/copper.ts";
import { converterDropLimit, criticalDropLimit, ordinaryDropLimit } from "../../standards/drop-limits.ts";
import { resistanceOfAwg } from "../../standards/resistance-awg.ts";
import { resistanceOfClass5 } from "../../standards/resistance-iec60228.ts";
import type { ProposedFix } from "../finding.ts";
import { runFixes, sizeInWords, whyNoSize } from "../fixes/sized-fix.ts";
import { lossesOn, lostInParts, relatedLosses, wayFixes } from "../fixes/way-fix.ts";
import {
  atProperty,
  defineRule,
  type Found,
  inNetwork,
  type JudgedNetwork,
  type JudgedPlan,
  perRun,
} from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { lengthInWords } from "../wording/lengths.ts";
import { atConductor, listInWords, partInWords, scenarioInWords } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { runsWithoutLength } from "../wording/unknown-length.ts";
import { otherLevers, wayOut } from "../wording/way-out.ts";

export const voltageDrop = defineRule<Values>({
  id: "conductor/voltage-drop",
  title: "Excessive voltage drop",
  formerTitles: ["Too much voltage lost on the way"],
  severity: "warning",
  why: "Voltage lost in the conductor is missing at the device: lamps dim, pumps and fridges stall or cut out, inverters shut down early.",
  sources: [
    criticalDropLimit.source,
    converterDropLimit.source,
    ordinaryDropLimit.source,
    resistanceOfAwg.source,
    resistanceOfClass5.source,
    strandFactor.source,
    temperatureCoefficient.source,
  ],
  fixable: true,
  repairsWait: "for conductors",
  acceptable: true,
  restsOn: "voltages",
  // Needs the drop at the working temperature, and in a network that of every supply path. An error if the device's own minimum
  // is not met, else a warning. In a network the minimum is left to scenario/device-below-minimum: it knows the true voltage.
  check: (plan) => [...ofCircuits(plan), ...inNetwork(plan, (network) => ofWays(plan, network))],
  message: (values) => ("lostMost" in values ? wayMessage(values) : circuitMessage(values)),
});

/** The voltage lost between the two ends of one circuit. */
function ofCircuits(plan: JudgedPlan): Found<Values>[] {
  return perRun(plan, ({ circuit, result: { drop } }) => {
    // A single conductor has no device at its end; its supply path is judged as a whole.
    if (circuit.word === "cable" || !drop.judged) return [];
    const { minimumV } = circuit;
    const starved =
      minimumV !== undefined && !isInNetwork(plan, circuit) && exceeds(minimumV, drop.arrivingV);
    if (!starved && meetsDropLimit(drop)) return [];
    const fixes = fixesOfCircuit(plan, circuit);
    const values: CircuitValues = {
      dropV: drop.dropV,
      dropPercent: drop.dropPercent,
      dropLimitPercent: drop.dropLimitPercent,
      limitSource: sourceInWords(drop.dropLimitSource),
      systemV: circuit.systemV,
      arrivingV: drop.arrivingV,
      estimate: estimateInWords(circuit.loadEstimate),
      ...(starved ? { minimumV } : {}),
      roundTrip: lengthInWords(circuit, drop.roundTripM),
      conductorC: drop.resistanceAtC,
      atLeast: drop.overloaded,
      wayOut: wayOut(fixes, whyNoSize(circuit, whyNoSizeOnWay(plan, circuit))),
    };
    return [
      {
        at: atProperty(circuit, ...sizePath(circuit)),
        severity: starved ? "error" : "warning",
        values,
        fixes,
      },
    ];
  });
}

function isInNetwork({ network }: JudgedPlan, { inNetwork }: Run): boolean {
  return inNetwork && network !== undefined;
}

/** The repair of the circuit; if a supply path that ends with it still loses too much, that of the path: one, not two in a row. */
function fixesOfCircuit(plan: JudgedPlan, circuit: Run): ProposedFix[] {
  const way = plan.network && waysTooLong(plan.network).byRecord.get(circuit.record);
  return way
    ? wayFixes(plan, {
        part: way.part,
        kinds: ["drop"],
        place: circuit.record,
        accepted: isAccepted(circuit, "conductor/voltage-drop"),
      })
    : runFixes(plan, circuit, "conductor/voltage-drop");
}

/** The voltage lost on each whole supply path, if no circuit on it has a finding of its own. */
function ofWays(plan: JudgedPlan, judged: JudgedNetwork): Found<Values>[] {
  const speaking = new Map(
    plan.circuits.flatMap(({ circuit, result: { drop } }) =>
      circuit.word === "circuit" && drop.judged && !meetsDropLimit(drop)
        ? [[circuit.record, circuit] as const]
        : [],
    ),
  );
  return waysTooLong(judged).ways.flatMap(({ way, place }): Found<Values>[] => {
    const part = judged.network.parts[way.part];
    if (!place || !part || isMendedBy(plan, speaking, { judged, way, place })) return [];
    const { run } = place;
    const fixes = wayFixes(plan, {
      part: way.part,
      kinds: ["drop"],
      place: place.record,
      accepted: isAccepted(run, "conductor/voltage-drop"),
    });
    const losses = lossesOn(judged, way);
    const inParts = lostInParts(judged, way);
    const most = losses.map(({ conductor, dropV }) => ({ name: conductor.name, dropV }));
    const withoutLength = runsWithoutLength(judged.network, way.withoutLength);
    const values: WayValues = {
      ...(withoutLength.length > 0 && { withoutLength: listInWords(withoutLength, 3) }),
      device: partInWords(part),
      bank: partInWords(judged.network.parts[way.battery] ?? part),
      dropV: way.dropV,
      dropPercent: way.dropPercent,
      dropLimitPercent: way.dropLimitPercent,
      limitSource: sourceInWords(way.dropLimitSource),
      systemV: (100 * way.dropV) / way.dropPercent,
      scenario: scenarioInWords(judged.network, way.scenario),
      estimate: estimateInWords(way.estimate),
      lostMost: [
        ...(inParts ? [{ name: listInWords(inParts.parts.map(partInWords)), dropV: inParts.dropV }] : []),
        ...most,
      ].slice(0, 2),
      wayOut: wayOut(fixes, inParts?.isCause ? betterParts : whyNoSizes(judged, way)),
    };
    return [
      {
        subject: place.name,
        at: atConductor(place, ...sizePath(run)),
        related: relatedLosses(losses, place.record),
        values,
        fixes,
      },
    ];
  });
}

const betterParts =
  "clean and tighten its joints and measure it again, use one with less resistance, or lead a conductor past it";

/** The size of the circuit alone may be enough for itself, and not for its supply path. */
function whyNoSizeOnWay({ network }: JudgedPlan, circuit: Run): string {
  const way = network && waysTooLong(network).byRecord.get(circuit.record);
  return way ? whyNoSizes(network, way) : "no standard size is enough; shorten the run, or set parallel";
}

function whyNoSizes({ network }: JudgedNetwork, way: SupplyPath): string {
  const otherwise = `${otherLevers}, or set parallel`;
  const terminals = way.legs.flatMap(({ conductor }) => {
    const run = network.conductors[conductor]?.run;
    return run ? (tightestTerminal(run) ?? []) : [];
  });
  const [first] = terminals;
  return first
    ? `no standard sizes that its terminals take are enough (${first.of ?? "its load"}: ${sizeInWords(first.largest)} at most); ${otherwise}`
    : `no standard sizes are enough; ${otherwise}`;
}

/** Supply paths with too much loss, and the conductor at which each is reported. */
interface WaysTooLong {
  readonly ways: readonly { readonly way: SupplyPath; readonly place: NetworkConductor | undefined }[];
  /** The first path, by record of that conductor. */
  readonly byRecord: ReadonlyMap<number, SupplyPath>;
}

/** Cached per network, because each circuit that loses too much needs them. */
function waysTooLong(judged: JudgedNetwork): WaysTooLong {
  let found = known.get(judged.result);
  if (!found) {
    const ways = judged.result.supplyPaths
      .filter((way) => !meetsDropLimit(way))
      .map((way) => ({ way, place: placeOfPath(judged.network, way) }));
    const byRecord = new Map<number, SupplyPath>();
    for (const { way, place } of ways) {
      if (place && !byRecord.has(place.record)) byRecord.set(place.record, way);
    }
    found = { ways, byRecord };
    known.set(judged.result, found);
  }
  return found;
}

const known = new WeakMap<NetworkResult, WaysTooLong>();

/**
 * True if a circuit on the path loses too much by itself and so has a finding already: the last one, whose repair considers the
 * whole path; or another, if its repair puts the path in order.
 */
function isMendedBy(
  plan: JudgedPlan,
  speaking: ReadonlyMap<number, Run>,
  on: { readonly judged: JudgedNetwork; readonly way: SupplyPath; readonly place: NetworkConductor },
): boolean {
  const { judged, way, place } = on;
  if (speaking.has(place.record)) return true;
  const records = new Set(
    way.legs.map(({ conductor }) => judged.network.conductors[conductor]?.record ?? -1),
  );
  const mended = new Map<number, Conductor>();
  for (const record of records) {
    const circuit = speaking.get(record);
    const sizing = circuit && repairSizing(plan).ofRun(circuit);
    if (sizing) mended.set(record, sizing.conductor);
  }
  return mended.size > 0 && dropWith(judged, way, mended) <= allowedOn(way);
}

function circuitMessage(values: CircuitValues): string {
  const {
    dropV,
    dropPercent,
    dropLimitPercent,
    systemV,
    arrivingV,
    estimate,
    minimumV,
    roundTrip,
    conductorC,
  } = values;
  const how = `over ${roundTrip} of wire at ${withUnit(conductorC, "°C")}`;
  const atLeast = values.atLeast ? "at least " : "";
  if (minimumV !== undefined) {
    const [arriving, needed] = formatDistinctWithUnit(arrivingV, minimumV, "V");
    return `Only ${arriving} of ${withUnit(systemV, "V")} arrive${estimate} (${atLeast}${withUnit(dropV, "V")} lost ${how}), the device needs ${needed}: ${values.wayOut}.`;
  }
  const [percent, limit] = formatDistinctWithUnit(dropPercent, dropLimitPercent, "%");
  return `Loses ${atLeast}${withUnit(dropV, "V")}, ${percent} of ${withUnit(systemV, "V")}${estimate}, ${how}; the limit is ${limit} (${values.limitSource}): ${values.wayOut}.`;
}

function wayMessage(values: WayValues): string {
  const { device, bank, dropV, dropPercent, dropLimitPercent, systemV, scenario, estimate, lostMost } =
    values;
  const [percent, limit] = formatDistinctWithUnit(dropPercent, dropLimitPercent, "%");
  const most = lostMost.map(({ name, dropV: lostV }) => `${withUnit(lostV, "V")} in ${name}`);
  const atLeast = values.withoutLength === undefined ? "" : "At least ";
  const unknown =
    values.withoutLength === undefined ? "" : `, without ${values.withoutLength}, whose length is not known`;
  return `${atLeast}${withUnit(dropV, "V")} are lost from the bank (${bank}) to ${device} ${scenario}, ${percent} of ${withUnit(systemV, "V")}${estimate}: ${listInWords(most)}${unknown}; the limit is ${limit} (${values.limitSource}): ${values.wayOut}.`;
}

type Values = CircuitValues | WayValues;

interface WayValues {
  /** The runs of unknown length on the path: the drop is at least the one given. Absent if there are none. */
  readonly withoutLength?: string;
  readonly device: string;
  readonly bank: string;
  readonly dropV: number;
  /** Percent of the nominal voltage. */
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
  readonly limitSource: string;
  readonly systemV: number;
  readonly scenario: string;
  readonly estimate: string;
  /** The parts on the way together, if these lose more than any run, and the runs with the highest losses, greatest first. */
  readonly lostMost: readonly { readonly name: string; readonly dropV: number }[];
  readonly wayOut: string;
}

interface CircuitValues {
  readonly dropV: number;
  /** Percent of the nominal voltage. */
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
  readonly limitSource: string;
  readonly systemV: number;
  readonly arrivingV: number;
  readonly estimate: string;
  /** Present if the device's own minimum is not met. */
  readonly minimumV?: number;
  /** Both conductors together, in the plan's unit. */
  readonly roundTrip: string;
  /** Conductor temperature for the resistance, °C. */
  readonly conductorC: number;
  /** The conductor is overloaded: it gets hotter than the temperature used, and loses more. */
  readonly atLeast: boolean;
  readonly wayOut: string;
}
