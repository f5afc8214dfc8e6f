import type {
  AlternatorPart,
  BatteryPart,
  ConductorDevice,
  DcDcChargerPart,
  InverterPart,
  Join,
  LoadPart,
  Network,
  NetworkConductor,
  NetworkTerminal,
  Part,
  SolarArrayPart,
  SolarControllerPart,
} from "../../model/network.ts";
import { placeDevices, type StatedConductor } from "../../model/protective-devices.ts";
import type { CableRun, Protection } from "../../model/run.ts";
import type { Citation } from "../../standards/citation.ts";
import { converterDropLimit, ordinaryDropLimit } from "../../standards/drop-limits.ts";
import { sampleCable } from "../sample-circuit.tester.ts";

/** Builds a network piece by piece, every default filled in. For tests only. Each part is returned as its terminals. */
export function sampleNetwork() {
  const terminals: NetworkTerminal[] = [];
  const parts: Part[] = [];
  const conductors: StatedConductor[] = [];

  function add<Name extends string>(
    names: readonly Name[],
    make: (
      terminals: Record<Name, number>,
      base: { index: number; record: number; name: string; accept: Record<string, string> },
    ) => Part,
  ): Record<Name, number> & { readonly part: number } {
    const index = parts.length;
    const own = Object.fromEntries(
      names.map((name) => {
        const side = /positive/i.test(name) ? "positive" : /negative/i.test(name) ? "negative" : "either";
        return [name, terminals.push({ part: index, name, side }) - 1];
      }),
    ) as Record<Name, number>;
    const part = make(own, { index, record: 1000 + index, name: `part ${index}`, accept: {} });
    parts.push(part);
    return { ...own, part: index };
  }
  const poles = ["positive", "negative"] as const;

  return {
    battery: (change: Partial<BatteryPart> = {}) =>
      add(poles, (own, base) => ({
        ...base,
        kind: "battery",
        terminals: own,
        chemistry: "LiFePO4",
        nominalV: 12.8,
        systemV: change.nominalV ?? 12.8,
        usualRestV: 12.8,
        capacityAh: 200,
        internal: { stated: true, lowOhm: 0.004, highOhm: 0.004, source },
        fullV: 13.6,
        fullVSource: source,
        ...change,
      })),
    busBar: () => add(["stud"], (own, base) => ({ ...base, kind: "busBar", terminals: own })).stud,
    panel: (negativeBus = true) =>
      add(["feed", "branch", "negative"], (own, base) => ({
        ...base,
        kind: "fusePanel",
        terminals: own,
        positions: 12,
        negativeBus,
      })),
    disconnect: () =>
      add(["line", "load"], (own, base) => ({ ...base, kind: "disconnect", terminals: own, ratedA: 300 })),
    relay: () =>
      add(["line", "load"], (own, base) => ({ ...base, kind: "relay", terminals: own, ratedA: 300 })),
    fuseHolder: (ohm = 0, ratingA = 300) =>
      add(["line", "load"], (own, base) => ({
        ...base,
        kind: "fuseHolder",
        terminals: own,
        ...deviceOf(ratingA, ohm),
      })),
    breaker: (ohm = 0, ratingA = 300) =>
      add(["line", "load"], (own, base) => ({
        ...base,
        kind: "breaker",
        terminals: own,
        family: "circuit breaker",
        ...deviceOf(ratingA, ohm),
      })),
    selectorSwitch: () =>
      add(["common", "input1", "input2", "input3", "input4"], (own, base) => ({
        ...base,
        kind: "selectorSwitch",
        terminals: own,
        ratedA: 300,
      })),
    shunt: (ohm = 0.0001) =>
      add(["batterySide", "systemSide"], (own, base) => ({
        ...base,
        kind: "shunt",
        terminals: own,
        ratedA: 500,
        ratedMV: ohm * 1_000 * 500,
      })),
    chassis: (ohm = 0.001) =>
      add(["bond", "metal"], (own, base) => ({
        ...base,
        kind: "chassis",
        terminals: own,
        milliohm: ohm * 1_000,
      })),
    load: (currentA = 10, change: Partial<LoadPart> = {}) =>
      add(poles, (own, base) => ({
        ...base,
        kind: "load",
        terminals: own,
        draws: { as: "current", currentA },
        critical: false,
        continuous: true,
        dropLimitPercent: 10,
        dropLimitStated: false,
        dropLimitSource: ordinaryDropLimit.source,
        systemV: 12,
        lowestV: 10.5,
        statedBy: "load",
        ...change,
      })),
    inverter: (change: Partial<InverterPart> = {}) =>
      add(poles, (own, base) => ({
        ...base,
        kind: "inverter",
        dropLimitPercent: 3,
        dropLimitStated: false,
        dropLimitSource: converterDropLimit.source,
        terminals: own,
        continuousW: 2000,
        efficiencyPercent: 90,
        cutOffV: 10.5,
        lowestV: change.cutOffV ?? 10.5,
        idleW: 0,
        loadW: 1000,
        ...change,
      })),
    alternator: (change: Partial<AlternatorPart> = {}) =>
      add(poles, (own, base) => ({
        ...base,
        kind: "alternator",
        terminals: own,
        ratedA: 100,
        outputV: 14.4,
        continuousPercent: 80,
        selfLimiting: true,
        ...change,
      })),
    shoreCharger: (outputA = 30, outputV = 14.4) =>
      add(poles, (own, base) => ({
        ...base,
        kind: "shoreCharger",
        terminals: own,
        outputA,
        outputV,
      })),
    dcDcCharger: ({ outputA = 30, isolated = false, ...change }: Partial<DcDcChargerPart> = {}) =>
      add(["inputPositive", "inputNegative", "outputPositive", "outputNegative"], (own, base) => ({
        ...base,
        kind: "dcDcCharger",
        dropLimitPercent: 3,
        dropLimitStated: false,
        dropLimitSource: converterDropLimit.source,
        terminals: own,
        outputA,
        outputV: 14.4,
        efficiencyPercent: 90,
        inputMinV: 10.5,
        lowestV: change.inputMinV ?? 10.5,
        isolated,
        runsAlways: false,
        ...change,
      })),
    solarArray: (change: Partial<SolarArrayPart> = {}) =>
      add(poles, (own, base) => ({
        ...base,
        kind: "solarArray",
        terminals: own,
        openCircuitV: 22,
        shortCircuitA: 10,
        maxPowerV: 18,
        maxPowerA: 9,
        series: 1,
        parallel: 1,
        ...change,
      })),
    solarController: (outputA = 30, change: Partial<SolarControllerPart> = {}) =>
      add(["solarPositive", "solarNegative", "positive", "negative"], (own, base) => ({
        ...base,
        kind: "solarController",
        terminals: own,
        maxInputV: 100,
        outputA,
        outputV: 14.4,
        tracking: true,
        efficiencyPercent: 95,
        ...change,
      })),
    other: (names: readonly string[], joins: readonly { between: [string, string]; ohm: number }[] = []) =>
      add(names, (own, base) => ({
        ...base,
        kind: "part",
        terminals: own,
        joins: joins.map(
          ({ between: [a, b], ohm }): Join => ({ between: [own[a] as number, own[b] as number], ohm }),
        ),
      })),
    /** Its index. `near` and `far` are ratings, A. */
    cable(from: number, to: number, { near, far, lengthM = 2, ...change }: SampleCable = {}): number {
      const record = conductors.length;
      return (
        conductors.push({
          record,
          name: `cable ${record}`,
          role: "cable",
          from,
          to,
          lengthM,
          run: sampleCable({ record, ...change }),
          near: device(near),
          far: device(far),
        }) - 1
      );
    },
    network: (): Network => ({
      terminals,
      parts,
      ...placeDevices(conductors, parts),
      scenarios: [
        {
          name: "everything on",
          on: parts.map(() => true),
          starting: parts.map(() => false),
          restV: parts.map((part) => (part.kind === "battery" ? part.nominalV : undefined)),
          restFrom: parts.map((part) => (part.kind === "battery" ? "plan" : undefined)),
          sunShare: 1,
          momentary: false,
        },
      ],
    }),
  };
}

export interface SampleCable extends Partial<CableRun> {
  readonly near?: number | Protection;
  readonly far?: number | Protection;
  readonly lengthM?: number;
}

const source: Citation = {
  document: "a sample",
  section: "",
  authority: "common practice",
  confirmed: "memory",
};

/** "3 near": a device's conductor and its end of it. */
export function placeIn({ devices }: Network, device: number): string {
  const { place } = devices[device]!;
  return place.at === "conductor" ? `${place.conductor} ${place.end}` : `part ${place.part}`;
}

function deviceOf(ratingA: number, ohm: number) {
  return { ratingA, milliohm: ohm * 1_000, writtenAs: "object", continuous: true, systemV: 12 } as const;
}

function device(given: number | Protection | undefined): Protection | null {
  return typeof given === "number" ? { ratingA: given, writtenAs: "number" } : (given ?? null);
}

/** As its record states it: its devices without their places. */
export function asStated({ near, far, ...conductor }: NetworkConductor): StatedConductor {
  return { ...conductor, near: withoutPlace(near), far: withoutPlace(far) };
}

function withoutPlace(device: ConductorDevice | null): StatedConductor["near"] {
  if (!device) return null;
  const { index: _, place: __, ...stated } = device;
  return stated;
}
