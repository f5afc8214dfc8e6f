import type { ScenarioResult, WorstOf } from "../../library/analysis/network-result.ts";
import { contentsOf, type NetworkSummary, networkSummary } from "../../library/documents/network-summary.ts";
import type { Network, NetworkConductor, Part } from "../../library/model/network.ts";
import type { Conductor } from "../../library/model/run.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import type { CheckedPlan, SourceRange } from "../evaluate/checked-plan.ts";
import type { Lines } from "./reported-lines.ts";

/**
 * The network of one plan, as the command line reports it: plain data, unrounded, with names instead of indices where people
 * look.
 */
export interface ReportedNetwork {
  readonly summary: NetworkSummary;
  /** How many of each the plan contains. */
  readonly contents: ReturnType<typeof contentsOf>;
  readonly scenarios: readonly ReportedScenario[];
  readonly parts: readonly ReportedPart[];
  readonly conductors: readonly ReportedConductor[];
  readonly waysFromBank: readonly ReportedWay[];
}

interface WrittenAt {
  readonly file: string;
  readonly line: number;
}

/** Results refer to a scenario by its index in {@link ReportedNetwork.scenarios}. */
type ReportedScenario = Partial<WrittenAt> & { readonly name: string } & (
    | {
        readonly state: "solved";
        /** The remaining sum of currents at any terminal, and the largest current, A. */
        readonly residualA: number;
        readonly largestA: number;
      }
    | {
        readonly state: "unsolved";
        readonly why: "collapse" | "not-converged";
        readonly reachedShare: number;
        /** Names of parts. */
        readonly culprits: readonly string[];
      }
  );

interface ReportedPart extends WrittenAt {
  readonly kind: Part["kind"];
  readonly name: string;
  readonly source?: string;
  readonly feeds: WorstOf | null;
  readonly draws: WorstOf | null;
  readonly surge: WorstOf | null;
  readonly lowest: { readonly voltageV: number; readonly scenario: number } | null;
  readonly results: readonly {
    readonly scenario: number;
    /** Out of its positive terminal into the network, or through it. */
    readonly currentA: number;
    readonly inputA: number;
    /** null if no source reaches it, and for parts that have no voltage of their own. */
    readonly voltageV: number | null;
  }[];
}

interface ReportedConductor extends WrittenAt {
  readonly name: string;
  readonly role: NetworkConductor["role"];
  readonly from: ReportedTerminal;
  readonly to: ReportedTerminal;
  readonly lengthM: number;
  readonly conductor: ReportedSize;
  /** null if it was not judged. */
  readonly ampacityA: number | null;
  /** Over all scenarios except motor starts; null if none could be solved. */
  readonly worst: WorstOf | null;
  readonly results: readonly {
    readonly scenario: number;
    /** Positive from `from` to `to`. */
    readonly currentA: number;
    readonly conductorC: number;
    readonly dropV: number;
  }[];
  readonly deadShort: {
    /** At its beginning; null if no source reaches it. */
    readonly greatestA: number | null;
    readonly estimated: boolean;
  };
  readonly devices: readonly ReportedDevice[];
}

interface ReportedTerminal {
  readonly part: string;
  readonly terminal: string;
}

interface ReportedDevice {
  readonly end: "near" | "far";
  readonly ratingA: number;
  readonly interruptingA: number | null;
  readonly greatestA: number;
  /** null if it protects nothing. */
  readonly leastA: number | null;
  readonly estimated: boolean;
}

interface ReportedSize {
  readonly awg?: number | string;
  readonly mm2?: number;
  readonly parallel?: number;
}

interface ReportedWay {
  readonly part: string;
  readonly battery: string;
  readonly scenario: number;
  readonly dropV: number;
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
  readonly arrivingV: number;
}

export function reportNetwork(
  plan: CheckedPlan,
  judged: JudgedNetwork,
  linesOf: (place: SourceRange) => Lines,
): ReportedNetwork {
  const { network, result } = judged;
  const at = (record: number): WrittenAt => {
    const { file, line } = linesOf(plan.callOf(record));
    return { file, line };
  };
  const nameOf = (part: number) => network.parts[part]?.name ?? "";
  const ampacities = new Map(
    plan.judgement.circuits.map(({ circuit, result: { ampacity } }) => [circuit.record, ampacity]),
  );
  const devices = devicesByConductor(judged);
  return {
    summary: reportSummary(networkSummary(plan.judgement, judged)),
    contents: contentsOf(network),
    scenarios: result.scenarios.map((one) => ({
      name: network.scenarios[one.scenario]?.name ?? "",
      ...whereOf(network, one, at),
      ...(one.state === "solved"
        ? { state: one.state, residualA: one.residualA, largestA: one.largestA }
        : {
            state: one.state,
            why: one.why,
            reachedShare: one.reachedShare,
            culprits: one.culprits.map(nameOf),
          }),
    })),
    parts: network.parts.map((part) => reportPart(judged, part, at(part.record))),
    conductors: network.conductors.map((conductor, index) => {
      const ampacity = ampacities.get(conductor.record);
      return {
        ...{ name: conductor.name, role: conductor.role, ...at(conductor.record) },
        from: terminalOf(network, conductor.from),
        to: terminalOf(network, conductor.to),
        lengthM: conductor.lengthM,
        conductor: reportSize(conductor.run.conductor),
        ampacityA: ampacity?.judged ? ampacity.ampacityA : null,
        worst: result.conductors[index]?.worst ?? null,
        results: result.scenarios.flatMap((one) => {
          if (one.state !== "solved") return [];
          const currentA = one.conductorA[index] ?? 0;
          return [
            {
              ...{ scenario: one.scenario, currentA, conductorC: one.conductorC[index] ?? 0 },
              dropV: Math.abs(currentA) * (one.conductorOhm[index] ?? 0),
            },
          ];
        }),
        deadShort: {
          greatestA: result.faults.conductors[index]?.greatestA ?? null,
          estimated: result.faults.conductors[index]?.estimated ?? false,
        },
        devices: devices.get(index) ?? [],
      };
    }),
    waysFromBank: result.supplyPaths.map(({ part, battery, legs: _, ...way }) => ({
      part: nameOf(part),
      battery: nameOf(battery),
      ...way,
    })),
  };
}

/** Copies only the properties that belong in a report. */
function reportSummary({ scenarios, unsolved, hardest, lowest }: NetworkSummary): NetworkSummary {
  return {
    ...{ scenarios, unsolved },
    hardest: hardest && {
      ...{ name: hardest.name, role: hardest.role, currentA: hardest.currentA },
      ...{ ampacityA: hardest.ampacityA, scenario: hardest.scenario },
    },
    lowest: lowest && { name: lowest.name, voltageV: lowest.voltageV, scenario: lowest.scenario },
  };
}

export function reportSize(conductor: Conductor): ReportedSize {
  return {
    ...(conductor.system === "awg" ? { awg: conductor.awg } : { mm2: conductor.mm2 }),
    ...(conductor.parallel > 1 ? { parallel: conductor.parallel } : {}),
  };
}

/** A built-in scenario has no place in the text. */
function whereOf(
  network: Network,
  { scenario }: ScenarioResult,
  at: (record: number) => WrittenAt,
): Partial<WrittenAt> {
  const record = network.scenarios[scenario]?.record;
  return record === undefined ? {} : at(record);
}

function reportPart({ result }: JudgedNetwork, part: Part, at: WrittenAt): ReportedPart {
  const worst = result.parts[part.index];
  return {
    ...{ kind: part.kind, name: part.name, ...at },
    ...(part.source === undefined ? {} : { source: part.source }),
    ...{ feeds: worst?.feeds ?? null, draws: worst?.draws ?? null },
    ...{ surge: worst?.surge ?? null, lowest: worst?.lowestV ?? null },
    results: result.scenarios.flatMap((one) => {
      if (one.state !== "solved") return [];
      return [
        {
          scenario: one.scenario,
          currentA: one.partA[part.index] ?? 0,
          inputA: one.inputA[part.index] ?? 0,
          voltageV: numberOrNull(one.partV[part.index]),
        },
      ];
    }),
  };
}

/** JSON has no NaN. */
function numberOrNull(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : value;
}

function terminalOf({ terminals, parts }: Network, index: number): ReportedTerminal {
  const terminal = terminals[index];
  return { part: parts[terminal?.part ?? -1]?.name ?? "", terminal: terminal?.name ?? "" };
}

function devicesByConductor({ network, result }: JudgedNetwork): ReadonlyMap<number, ReportedDevice[]> {
  const devices = new Map<number, ReportedDevice[]>();
  for (const { conductor, end, greatestA, estimated, least } of result.faults.devices) {
    const on = network.conductors[conductor];
    const stated = end === "near" ? on?.near : on?.far;
    if (!stated) continue;
    const here = devices.get(conductor) ?? [];
    devices.set(conductor, here);
    here.push({
      ...{ end, ratingA: stated.ratingA, interruptingA: stated.interruptingA ?? null },
      ...{ greatestA, leastA: least?.currentA ?? null, estimated },
    });
  }
  return devices;
}
