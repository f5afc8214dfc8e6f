import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { asStated, sampleNetwork } from "../../library/analysis/network/sample-network.tester.ts";
import { resistorNetwork } from "../../library/analysis/network/solver/resistor-network.tester.ts";
import { solveScenarios } from "../../library/analysis/network/solver/solve-scenarios.ts";
import type { SolvedScenario } from "../../library/analysis/network-result.ts";
import { internalConnections } from "../../library/model/internal-connections.ts";
import type { Network, Part } from "../../library/model/network.ts";
import { passesCurrentOn } from "../../library/model/part-roles.ts";
import { placeDevices } from "../../library/model/protective-devices.ts";
import { randomNetwork, randomNumbers } from "../published/ngspice/random-network.ts";
import { sampledRuns } from "../setup/sampled.ts";

const anySeed = fc.integer({ min: 0, max: 2 ** 31 - 1 });
const runs = { numRuns: sampledRuns(120) };

/** Networks whose answer once depended on the order of their parts. */
const onceOrdered = [
  // No current flows anywhere.
  1423340046,
  // Two sources behind an open disconnect: one of them was at 120 V.
  597374216, 1823215528,
  // No answer in some orders: blocked sources are alone on their bus, and a load draws there.
  1141860287, 1169927659, 1626441370, 2079394295, 34431812,
  // "Collapse" in some orders: converters make a pivot negative.
  1875591661, 1884912542,
].map((seed): [number] => [seed]);

describe("any network", () => {
  it("takes in as much power as it gives out and turns into heat", () => {
    const tally = new SolvedTally();
    fc.assert(
      fc.property(anySeed, (seed) => {
        const network = randomNetwork(seed);
        const result = tally.add(solved(network));
        if (!result) return;
        const balance = new PowerBalance();
        const over = (a: number, b: number) => result.terminalV[a]! - result.terminalV[b]!;
        network.conductors.forEach((_, conductor) => {
          balance.add(-(result.conductorA[conductor]! ** 2) * result.conductorOhm[conductor]!);
        });
        for (const part of network.parts) {
          const currentA = result.partA[part.index]!;
          if (passesCurrentOn(part)) {
            for (const { ohm } of internalConnections(part)) balance.add(-(currentA ** 2) * ohm);
          } else if (part.kind === "battery") {
            const restV = network.scenarios[0]!.restV[part.index]!;
            balance.add(restV * currentA - currentA ** 2 * part.internal.highOhm);
          } else if (currentA !== 0) {
            balance.add(result.partV[part.index]! * currentA);
          }
          if (part.kind === "dcDcCharger") {
            const { inputPositive, inputNegative } = part.terminals;
            const inputA = result.inputA[part.index]!;
            if (inputA !== 0) balance.add(-over(inputPositive, inputNegative) * inputA);
          } else if (part.kind === "solarController") {
            const { solarPositive, solarNegative } = part.terminals;
            const inputA = result.inputA[part.index]!;
            if (inputA !== 0) balance.add(-over(solarPositive, solarNegative) * inputA);
          }
        }
        expect(Math.abs(balance.sum)).toBeLessThanOrEqual(1e-9 * balance.largest);
      }),
      runs,
    );
    tally.expectMostSolved();
  });

  it("loses in converters what their efficiency says, and constant powers draw what they state", () => {
    const tally = new SolvedTally();
    fc.assert(
      fc.property(anySeed, (seed) => {
        const network = randomNetwork(seed);
        const result = tally.add(solved(network));
        if (!result) return;
        for (const part of network.parts) {
          const givenW = result.partV[part.index]! * result.partA[part.index]!;
          const inputA = result.inputA[part.index]!;
          if (part.kind === "dcDcCharger" && inputA > 0) {
            const { inputPositive, inputNegative } = part.terminals;
            const takenW = (result.terminalV[inputPositive]! - result.terminalV[inputNegative]!) * inputA;
            expect(givenW / takenW).toBeCloseTo(part.efficiencyPercent / 100, 8);
          }
          if (part.kind === "inverter" && result.partA[part.index] !== 0) {
            expect(-givenW / ((100 * part.loadW) / part.efficiencyPercent + part.idleW)).toBeCloseTo(1, 8);
          }
        }
      }),
      runs,
    );
    tally.expectMostSolved();
  });

  it("has the same results whatever the order of its parts and conductors", () => {
    const tally = new SolvedTally();
    fc.assert(
      fc.property(anySeed, (seed) => {
        const network = randomNetwork(seed);
        const random = randomNumbers(seed + 1);
        const conductors = shuffled(network.conductors.length, random);
        const parts = shuffled(network.parts.length, random);
        const result = tally.add(solved(network));
        const other = solved(reordered(network, parts, conductors));
        if (!result || !other) {
          expect(other).toBe(result);
          return;
        }
        const voltages = result.terminalV.map((voltageV, at) => [voltageV, other.terminalV[at]!] as const);
        expect(farApart(voltages, (voltageV) => 1e-9 * Math.max(1, Math.abs(voltageV)))).toEqual([]);
        const currents = [
          ...conductors.map((from, at) => [result.conductorA[from]!, other.conductorA[at]!] as const),
          ...parts.map((from, at) => [result.partA[from]!, other.partA[at]!] as const),
        ];
        expect(farApart(currents, () => 1e-9 * result.largestA)).toEqual([]);
      }),
      { ...runs, examples: onceOrdered },
    );
    tally.expectMostSolved();
  });

  it("gives no device less voltage when a conductor is laid beside another", () => {
    const tally = new SolvedTally();
    fc.assert(
      fc.property(anySeed, fc.nat(), fc.boolean(), (seed, pick, constantPower) => {
        const network = feederTree(seed, constantPower);
        const result = tally.add(solved(network));
        if (!result) return;
        const twin = network.conductors[pick % network.conductors.length]!;
        const thicker = solved({ ...network, conductors: [...network.conductors, twin] });
        if (!thicker) throw new Error("There was an operating point with less copper.");
        network.parts.forEach((part) => {
          if (part.kind !== "load") return;
          expect(thicker.partV[part.index]! - result.partV[part.index]!).toBeGreaterThanOrEqual(-1e-9);
        });
      }),
      runs,
    );
    tally.expectMostSolved();
  });
});

describe("linear networks", () => {
  it("scale with their sources, and the effects of two sources add up", () => {
    fc.assert(
      fc.property(anySeed, fc.double({ min: 0.5, max: 4, noNaN: true }), (seed, factor) => {
        const voltages = (first: number, second: number) => {
          const random = randomNumbers(seed);
          const nodes = 3 + Math.floor(20 * random());
          const anyNode = () => Math.floor(nodes * random());
          const tree = Array.from({ length: nodes - 1 }, (_, node) => ({
            between: [node + 1, Math.floor((node + 1) * random())] as const,
            ohm: 10 ** (6 * random() - 5),
          }));
          const rest = Array.from({ length: 2 * nodes }, () => ({
            between: [anyNode(), anyNode()] as const,
            ohm: 10 ** (6 * random() - 5),
          }));
          const source = (emfV: number) => {
            const [positive, negative] = [anyNode(), anyNode()];
            return { positive, negative, emfV, ohm: 10 ** (2 * random() - 3) };
          };
          const network = resistorNetwork({
            batteries: [source(first), source(second)],
            resistances: [...tree, ...rest],
          });
          const { terminalV } = solved(network)!;
          return terminalV.map((voltageV) => voltageV - terminalV.at(-1)!);
        };
        const [both, one, other] = [voltages(12, 7), voltages(12, 0), voltages(0, 7)];
        const scaled = voltages(12 * factor, 7 * factor);
        both.forEach((voltageV, index) => {
          expect(one[index]! + other[index]!).toBeCloseTo(voltageV, 9);
          expect(scaled[index]! / factor).toBeCloseTo(voltageV, 9);
        });
      }),
      runs,
    );
  });
});

/** Pairs of figures that differ; a missing figure must be missing on both sides. */
function farApart(
  pairs: readonly (readonly [number, number])[],
  within: (figure: number) => number,
): typeof pairs {
  return pairs.filter(
    ([one, other]) => Number.isNaN(one) !== Number.isNaN(other) || Math.abs(one - other) > within(one),
  );
}

class PowerBalance {
  sum = 0;
  largest = 0;
  add(watts: number): void {
    this.sum += watts;
    this.largest = Math.max(this.largest, Math.abs(watts));
  }
}

/** Counts the networks of one property that have an operating point: any other one satisfies the property without a check. */
class SolvedTally {
  private networks = 0;
  private solved = 0;
  add(result: SolvedScenario | undefined): SolvedScenario | undefined {
    this.networks++;
    if (result) this.solved++;
    return result;
  }
  expectMostSolved(): void {
    expect(this.solved / this.networks, "share of the networks that were solved").toBeGreaterThanOrEqual(0.8);
  }
}

function solved(network: Network): SolvedScenario | undefined {
  const [result] = solveScenarios(network);
  return result?.state === "solved" ? result : undefined;
}

/** The old index of the element at each new index. */
function shuffled(length: number, random: () => number): number[] {
  const order = Array.from({ length }, (_, index) => index);
  for (let at = length - 1; at > 0; at--) {
    const other = Math.floor((at + 1) * random());
    [order[at], order[other]] = [order[other]!, order[at]!];
  }
  return order;
}

/** Terminals keep their numbers, to let their voltages be compared one by one. */
function reordered(network: Network, parts: readonly number[], conductors: readonly number[]): Network {
  const placeOf = new Map(parts.map((from, at) => [from, at]));
  const [scenario] = network.scenarios;
  return {
    terminals: network.terminals.map((terminal) => ({ ...terminal, part: placeOf.get(terminal.part)! })),
    parts: parts.map((from, at): Part => ({ ...network.parts[from]!, index: at })),
    ...placeDevices(
      conductors.map((from) => asStated(network.conductors[from]!)),
      parts.map((from) => network.parts[from]!),
    ),
    scenarios: [
      {
        ...scenario!,
        on: parts.map((from) => scenario!.on[from]!),
        starting: parts.map((from) => scenario!.starting[from]!),
        restV: parts.map((from) => scenario!.restV[from]),
        selected: new Map(
          [...(scenario!.selected ?? [])].map(([part, inputs]) => [placeOf.get(part)!, inputs]),
        ),
      },
    ],
  };
}

/** A bank that feeds loads over a tree of cables: no loops, where more copper could take current from another path. */
function feederTree(seed: number, constantPower: boolean): Network {
  const random = randomNumbers(seed);
  const build = sampleNetwork();
  const battery = build.battery();
  const places = [{ plus: battery.positive, minus: battery.negative }];
  for (let count = 3 + Math.floor(20 * random()); count > 0; count--) {
    const { plus, minus } = places[Math.floor(places.length * random())]!;
    const isLoad = random() < 0.6;
    const [outPlus, outMinus] = isLoad
      ? Object.values(build.load(0.5 + 6 * random()))
      : [build.busBar(), build.busBar()];
    build.cable(plus, outPlus!, { lengthM: 0.5 + 6 * random() });
    build.cable(outMinus!, minus, { lengthM: 0.5 + 6 * random() });
    if (!isLoad) places.push({ plus: outPlus!, minus: outMinus! });
  }
  const network = build.network();
  if (!constantPower) return network;
  return {
    ...network,
    parts: network.parts.map(
      (part): Part =>
        part.kind === "load" && part.draws.as === "current"
          ? { ...part, draws: { as: "power", powerW: 12 * part.draws.currentA } }
          : part,
    ),
  };
}
