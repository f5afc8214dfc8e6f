import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { judge } from "../../library/judge.ts";
import type { Network } from "../../library/model/network.ts";
import type { Word } from "../../library/model/record.ts";
import { published } from "./published-data.ts";

/**
 * Whole networks against a second engine: written separately, in another language and with other methods (see
 * oracle-networks.py). Neither proves the other right; a slip in one of them shows.
 */
const { cases } = process.env.ORACLE_NETWORKS
  ? (JSON.parse(readFileSync(process.env.ORACLE_NETWORKS, "utf8")) as Cases)
  : published<Cases>("oracle-networks.json");

interface Cases {
  readonly cases: readonly Case[];
}

interface Case {
  readonly seed: number;
  readonly records: readonly { readonly word: Word; readonly input: object }[];
  readonly answers: Answers | { readonly positions: readonly Position[] };
}

/** One scenario with the switch between two banks in one of its positions. */
interface Position {
  readonly scenario: string;
  readonly switch: number;
  /** "open", the one input that is connected, or "all". */
  readonly state: string;
  readonly conductors: readonly (At & { readonly currentA: number })[];
  readonly loads: readonly (At & { readonly voltageV: number })[];
}

interface Answers {
  /** `designA`: for ampacity, with the constant powers of loads at the lowest voltage at which they work. */
  readonly conductors: readonly (At & {
    readonly role: string;
    readonly currentA: number;
    readonly designA: number;
  })[];
  /** `givesA`: for its rating, with inverters at that voltage too. */
  readonly batteries: readonly (At & { readonly givesA: number })[];
  readonly loads: readonly (At & { readonly voltageV: number })[];
  readonly greatestFaults: readonly (At & { readonly end: string; readonly currentA: number })[];
  readonly unprotected: readonly (At & { readonly ends: readonly string[] })[];
}

interface At {
  readonly record: number;
}

const whole = cases.flatMap(({ answers, ...plan }) => ("positions" in answers ? [] : [{ ...plan, answers }]));
const positions = cases.flatMap(({ answers, ...plan }) =>
  "positions" in answers ? [{ ...plan, answers }] : [],
);

describe("networks worked out twice", () => {
  it("are many, and hold every kind of thing", () => {
    expect(whole.length).toBeGreaterThanOrEqual(80);
    expect(whole.flatMap(({ answers }) => answers.unprotected).length).toBeGreaterThan(50);
    expect(whole.flatMap(({ answers }) => answers.greatestFaults).length).toBeGreaterThan(300);
    const words = new Set(cases.flatMap(({ records }) => records.map(({ word }) => word)));
    for (const word of ["fuseHolder", "breaker", "relay", "selectorSwitch", "starterMotor"] as const)
      expect(words).toContain(word);
    const states = positions.flatMap(({ answers }) =>
      answers.positions.map(({ scenario, state }) => `${scenario}, ${state}`),
    );
    expect([...new Set(states)].sort()).toEqual(
      ["cranking", "on the bank"].flatMap((scenario) =>
        ["all", "input1", "input2", "open"].map((state) => `${scenario}, ${state}`),
      ),
    );
  });

  it.each(whole)("seed $seed", ({ records, answers }) => {
    const { network, result } = judgedNetwork(records);
    const [scenario] = result.scenarios;
    if (scenario?.state !== "solved") throw new Error("The network was not solved.");

    expect(network.conductors.map(({ record, role }) => `${record} ${role}`)).toEqual(
      answers.conductors.map(({ record, role }) => `${record} ${role}`),
    );
    answers.conductors.forEach(({ currentA, designA }, index) => {
      expectSame(scenario.conductorA[index], currentA, scenario.largestA);
      expectSame(result.conductors[index]?.design?.currentA, designA, scenario.largestA);
    });
    for (const { record, givesA } of answers.batteries)
      expectSame(result.parts[partAt(network, record)]?.feeds?.currentA, givesA, scenario.largestA);
    for (const { record, voltageV } of answers.loads)
      expectSame(scenario.partV[partAt(network, record)], voltageV, voltageV);
    for (const { record, end, currentA } of answers.greatestFaults) {
      const fault = result.faults.devices.find(({ device }) => {
        const { place } = network.devices[device]!;
        return (
          place.at === "conductor" &&
          network.conductors[place.conductor]?.record === record &&
          place.end === end
        );
      });
      expectSame(fault?.greatestA ?? 0, currentA, 1_000);
    }
    expect(
      result.topology.unprotected.map(({ conductor, ends }) => ({
        record: network.conductors[conductor]?.record,
        ends,
      })),
    ).toEqual(answers.unprotected);
  });

  it.each(positions)("seed $seed, in every position", ({ records, answers }) => {
    const { network, result } = judgedNetwork(records);
    for (const { scenario, switch: record, state, conductors, loads } of answers.positions) {
      const part = partAt(network, record);
      const index = network.scenarios.findIndex(({ name, on, selected, furtherPosition }) => {
        const isNamed = furtherPosition ? name.startsWith(`${scenario}, `) : name === scenario;
        return isNamed && (on[part] ? (selected?.get(part)?.join() ?? "all") : "open") === state;
      });
      const solved = result.scenarios[index];
      if (solved?.state !== "solved") throw new Error(`${scenario} with ${state} was not judged.`);
      conductors.forEach(({ currentA }, at) => {
        expectSame(solved.conductorA[at], currentA, solved.largestA);
      });
      for (const { record: load, voltageV } of loads)
        expectSame(solved.partV[partAt(network, load)], voltageV, voltageV);
    }
  });
});

function judgedNetwork(records: Case["records"]) {
  const judged = judge(
    records.map(({ word, input }, index) => ({ word, input, fallbackName: `record ${index}` })),
    [],
  );
  expect(judged.model.invalid).toEqual([]);
  if (!judged.network) throw new Error("The network was not read.");
  return judged.network;
}

function partAt({ parts }: Network, record: number): number {
  return parts.findIndex((part) => part.record === record);
}

/** Both engines stop when no value changes by more than rounding; the order of their operations accounts for the rest. */
function expectSame(actual: number | undefined, expected: number, scale: number): void {
  expect(Math.abs((actual ?? Number.NaN) - expected)).toBeLessThanOrEqual(
    1e-7 * Math.max(Math.abs(scale), Math.abs(expected)),
  );
}
