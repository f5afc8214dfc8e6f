import { unknownSharesOf } from "../../library/analysis/network/unknown-shares.ts";
import type { ScenarioResult, WorstOf } from "../../library/analysis/network-result.ts";
import { withoutLengthTo } from "../../library/analysis/unknown-lengths.ts";
import { dropVerdict } from "../../library/analysis/voltage-drop.ts";
import { contentsOf, networkSummary } from "../../library/documents/network-summary.ts";
import type { Network, Part } from "../../library/model/network.ts";
import type { Conductor } from "../../library/model/run.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { runsWithoutLength } from "../../library/rules/wording/unknown-length.ts";
import type { CheckedPlan, SourceRange } from "../evaluate/checked-plan.ts";
import type {
  Lines,
  ReportedDevice,
  ReportedNetwork,
  ReportedPart,
  ReportedSize,
  ReportedTerminal,
} from "./report-schema.ts";

type WrittenAt = Pick<Lines, "file" | "line">;

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
  const { inConductors, asParts } = reportDevices(judged);
  const { sharesCurrentBy } = unknownSharesOf(network);
  const summary = networkSummary(plan.judgement, judged);
  return {
    judged: true,
    withoutCircuits: plan.judgement.model.withoutCircuits.map(({ name }) => name),
    contents: contentsOf(network),
    summary: { ...summary, unsolved: [...summary.unsolved] },
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
    parts: network.parts.map((part) => {
      const device = asParts.get(part.index);
      return { ...reportPart(judged, part, at(part.record)), ...(device && { device }) };
    }),
    conductors: network.conductors.map((conductor, index) => {
      const ampacity = ampacities.get(conductor.record);
      return {
        ...{ name: conductor.name, role: conductor.role, ...at(conductor.record) },
        from: terminalOf(network, conductor.from),
        to: terminalOf(network, conductor.to),
        lengthM: conductor.lengthM ?? null,
        conductor: reportSize(conductor.run.conductor),
        ampacityA: ampacity?.judged ? ampacity.ampacityA : null,
        worst: reportWorst(network, result.conductors[index]?.worst),
        design: reportWorst(network, result.conductors[index]?.design),
        withoutLength: [
          ...runsWithoutLength(
            network,
            network.scenarios.flatMap((scenario) => sharesCurrentBy(scenario, index)),
          ),
        ],
        results: result.scenarios.flatMap((one) => {
          if (one.state !== "solved") return [];
          const currentA = one.conductorA[index] ?? 0;
          return [
            {
              ...{ scenario: one.scenario, currentA, conductorC: one.conductorC[index] ?? 0 },
              dropV:
                conductor.lengthM === undefined ? null : Math.abs(currentA) * (one.conductorOhm[index] ?? 0),
            },
          ];
        }),
        deadShort: {
          greatestA: result.faults.conductors[index]?.greatestA ?? null,
          estimated: result.faults.conductors[index]?.estimated ?? false,
        },
        devices: inConductors.get(index) ?? [],
      };
    }),
    waysFromBank: result.supplyPaths.map((path) => {
      const { part, battery, legs: _, dropLimitSource: __, withoutLength: ___, ...way } = path;
      return {
        ...{ part: nameOf(part), battery: nameOf(battery), ...way },
        verdict: dropVerdict(path),
        withoutLength: [...runsWithoutLength(network, path.withoutLength)],
      };
    }),
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

function reportPart({ network, result }: JudgedNetwork, part: Part, at: WrittenAt): ReportedPart {
  const worst = result.parts[part.index];
  const { partSharesCurrentBy } = unknownSharesOf(network);
  return {
    ...{ kind: part.kind, name: part.name, ...at },
    ...(part.source === undefined ? {} : { source: part.source }),
    feeds: reportWorst(network, worst?.feeds),
    draws: reportWorst(network, worst?.draws),
    surge: reportWorst(network, worst?.surge),
    lowest: worst?.lowestV ?? null,
    withoutLength: [
      ...runsWithoutLength(network, [
        ...withoutLengthTo({ network, result }, part),
        ...network.scenarios.flatMap((scenario) => partSharesCurrentBy(scenario, part.index)),
      ]),
    ],
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

function reportWorst({ parts }: Network, worst: WorstOf | undefined): ReportedPart["feeds"] {
  if (!worst) return null;
  const { currentA, scenario, alone, estimate } = worst;
  const known = { currentA, ...(estimate && { estimate }) };
  return alone === undefined ? { ...known, scenario } : { ...known, alone: parts[alone]?.name ?? "" };
}

/** JSON has no NaN. */
function numberOrNull(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : value;
}

function terminalOf({ terminals, parts }: Network, index: number): ReportedTerminal {
  const terminal = terminals[index];
  return { part: parts[terminal?.part ?? -1]?.name ?? "", terminal: terminal?.name ?? "" };
}

/** Every fuse and breaker: those in conductors that a source reaches, by conductor index; those that are parts, by part index. */
function reportDevices({ network, result }: JudgedNetwork): {
  readonly inConductors: ReadonlyMap<number, ReportedDevice[]>;
  readonly asParts: ReadonlyMap<number, NonNullable<ReportedPart["device"]>>;
} {
  const faults = new Map(result.faults.devices.map((fault) => [fault.device, fault]));
  const inConductors = new Map<number, ReportedDevice[]>();
  const asParts = new Map<number, NonNullable<ReportedPart["device"]>>();
  for (const { index, place, ratingA, interruptingA = null } of network.devices) {
    const { greatestA, least, estimated = false } = faults.get(index) ?? {};
    // One that is not known is not stated.
    const leastA = least && !least.isAtMost ? least.currentA : null;
    if (place.at === "part")
      asParts.set(place.part, { ratingA, interruptingA, greatestA: greatestA ?? null, leastA, estimated });
    else if (greatestA !== undefined) {
      const here = inConductors.get(place.conductor) ?? [];
      inConductors.set(place.conductor, here);
      here.push({ end: place.end, ratingA, interruptingA, greatestA, leastA, estimated });
    }
  }
  return { inConductors, asParts };
}
