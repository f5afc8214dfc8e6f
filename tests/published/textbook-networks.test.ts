import { describe, expect, it } from "vitest";
import {
  nodeTerminal,
  resistorNetwork,
} from "../../library/analysis/network/solver/resistor-network.tester.ts";
import { solveScenarios } from "../../library/analysis/network/solver/solve-scenarios.ts";
import type { Network } from "../../library/model/network.ts";

/** Ω; used if the book states no internal resistance. It shifts the answers by far less than their printed precision. */
const stiffOhm = 1e-6;

describe("networks worked out in textbooks", () => {
  it("unbalanced Wheatstone bridge", () => {
    // A. D. Helfrick, W. D. Cooper, "Modern Electronic Instrumentation and Measurement Techniques", 1st ed. (impression of
    // 2009), example 5-1, p. 101: arms of 1000, 100, 200 and 2005 Ω, 5 V, galvanometer of 100 Ω and 10 mm/µA;
    // it deflects by 33.26 mm. Read as a worked listing of that example.
    const network = resistorNetwork({
      batteries: [{ positive: 0, negative: 1, emfV: 5, ohm: stiffOhm }],
      resistances: [
        { between: [0, 2], ohm: 200 },
        { between: [2, 1], ohm: 100 },
        { between: [0, 3], ohm: 2005 },
        { between: [3, 1], ohm: 1000 },
        { between: [2, 3], ohm: 100 },
      ],
    });
    const galvanometerA = voltage(network, 2, 3) / 100;
    expect(galvanometerA * 1e6 * 10).toBeCloseTo(33.26, 2);
  });

  it("ladder of two sections", () => {
    // J. Bird, "Electrical and Electronic Principles and Technology", chapter 5, problem 14: 2 Ω, across 9 Ω, 1.4 Ω,
    // across 2 Ω and 8 Ω, 17 V. The source gives 4 A, 3 A flow in the 1.4 Ω, 0.6 A in the 8 Ω.
    const network = resistorNetwork({
      batteries: [{ positive: 0, negative: 1, emfV: 17, ohm: stiffOhm }],
      resistances: [
        { between: [0, 2], ohm: 2 },
        { between: [2, 1], ohm: 9 },
        { between: [2, 3], ohm: 1.4 },
        { between: [3, 1], ohm: 2 },
        { between: [3, 1], ohm: 8 },
      ],
    });
    expect(batteryA(network)).toBeCloseTo(4, 5);
    expect(voltage(network, 2, 3) / 1.4).toBeCloseTo(3, 5);
    expect(voltage(network, 3, 1) / 8).toBeCloseTo(0.6, 5);
  });

  it("greatest power that a source gives", () => {
    // J. Bird, the same, chapter 13, problem 23: 30 V behind 1.5 Ω gives at most 150 W, at 10 A into 1.5 Ω.
    const into = (ohm: number) => {
      const network = resistorNetwork({
        batteries: [{ positive: 0, negative: 1, emfV: 30, ohm: 1.5 }],
        resistances: [{ between: [0, 1], ohm }],
      });
      return batteryA(network) ** 2 * ohm;
    };
    expect(into(1.5)).toBeCloseTo(150, 9);
    expect(into(1.4)).toBeLessThan(150);
    expect(into(1.6)).toBeLessThan(150);
  });

  it("terminal voltage and load", () => {
    // OpenStax, physics, example "Terminal Voltage and Load": 12.0 V, 0.1 Ω inside, 0.5 Ω outside:
    // 20.0 A, 10.0 V, 200 W.
    const network = resistorNetwork({
      batteries: [{ positive: 0, negative: 1, emfV: 12, ohm: 0.1 }],
      resistances: [{ between: [0, 1], ohm: 0.5 }],
    });
    expect(batteryA(network)).toBeCloseTo(20, 9);
    expect(voltage(network, 0, 1)).toBeCloseTo(10, 9);
  });

  it("a car battery that is charged", () => {
    // OpenStax, physics, problem on charging a car battery: 12 V, 0.05 Ω, charged with 60 A: 15.0 V at its terminals,
    // 180 W of heat, 720 W stored. The charger is a stiff source of 15 V behind a micro-ohm.
    const network = resistorNetwork({
      batteries: [
        { positive: 0, negative: 1, emfV: 12, ohm: 0.05 },
        { positive: 0, negative: 1, emfV: 15, ohm: stiffOhm },
      ],
      resistances: [{ between: [0, 1], ohm: 1e6 }],
    });
    const currentA = -batteryA(network);
    expect(currentA).toBeCloseTo(60, 1);
    expect(voltage(network, 0, 1)).toBeCloseTo(15, 3);
    expect(currentA ** 2 * 0.05).toBeCloseTo(180, 1);
    expect(currentA * 12).toBeCloseTo(720, 0);
  });

  it("bolted fault of a telecom rack", () => {
    // Engineers' forum, "bolted fault current", eng-tips.com thread 345438: seven strings of four 12 V blocks, each block
    // good for 3800 A when shorted (so 12/3800 Ω inside): 26,600 A at the terminals.
    const strings = Array.from({ length: 7 }, (_, string) =>
      Array.from({ length: 4 }, (_, block) => ({
        positive: block === 3 ? 0 : 2 + 3 * string + block,
        negative: block === 0 ? 1 : 1 + 3 * string + block,
        emfV: 12,
        ohm: 12 / 3800,
      })),
    ).flat();
    const network = resistorNetwork({ batteries: strings, resistances: [{ between: [0, 1], ohm: 0 }] });
    const [result] = solveScenarios(network);
    if (result?.state !== "solved") throw new Error("A short is solved as well.");
    const topmost = strings.flatMap(({ positive }, part) => (positive === 0 ? [part] : []));
    const faultA = topmost.reduce((sum, part) => sum + result.partA[part]!, 0);
    expect(faultA).toBeCloseTo(26_600, 6);
  });
});

function solved(network: Network) {
  const [result] = solveScenarios(network);
  if (result?.state !== "solved") throw new Error(`Not solved: ${JSON.stringify(result)}`);
  return result;
}

function voltage(network: Network, a: number, b: number): number {
  const { terminalV } = solved(network);
  return terminalV[nodeTerminal(network, a)]! - terminalV[nodeTerminal(network, b)]!;
}

function batteryA(network: Network): number {
  return solved(network).partA[0]!;
}
