import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampledRuns } from "../../../tests/setup/sampled.ts";
import type { Network, Scenario } from "../../model/network.ts";
import { statedInPlan } from "../../model/stated-in-plan.ts";
import type { SolvedScenario } from "../network-result.ts";
import { sampleNetwork } from "./sample-network.tester.ts";
import { solveScenarios } from "./solver/solve-scenarios.ts";
import { topologyOf } from "./topology/topology.ts";
import { aloneCurrents } from "./worst-alone.ts";

const aloneIn = (network: Network) => aloneCurrents(network, topologyOf(network), []);

/** The network solved with one device on at a time, batteries alone: the result that {@link aloneCurrents} must give without so many solutions. */
function solvedOneByOne(network: Network): readonly number[] {
  const [base] = network.scenarios;
  const devices = network.parts.filter(({ kind }) => kind === "load");
  const scenarios = devices.map(
    ({ index }): Scenario => ({
      ...base!,
      on: network.parts.map((part) => (part.kind === "load" ? part.index === index : true)),
    }),
  );
  const solved = solveScenarios({ ...network, scenarios }).filter(
    (one): one is SolvedScenario => one.state === "solved",
  );
  expect(solved.length).toBe(devices.length);
  return network.conductors.map((_, conductor) =>
    Math.max(...solved.map(({ conductorA }) => Math.abs(conductorA[conductor]!))),
  );
}

describe("the current of each single device", () => {
  it("is what a solution with that device alone gives, in trees, rings, and behind parallel batteries", () => {
    const plans = fc.record({
      batteries: fc.integer({ min: 1, max: 3 }),
      buses: fc.integer({ min: 1, max: 5 }),
      more: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.boolean()), { maxLength: 3 }),
      loads: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.integer({ min: 1, max: 40 })), {
        minLength: 1,
        maxLength: 6,
      }),
    });
    fc.assert(
      fc.property(plans, ({ batteries, buses, more, loads }) => {
        const build = sampleNetwork();
        const plus = Array.from({ length: buses }, () => build.busBar());
        const minus = Array.from({ length: buses }, () => build.busBar());
        for (let bus = 1; bus < buses; bus++) {
          build.cable(plus[bus - 1]!, plus[bus]!, { lengthM: 0.1 });
          build.cable(minus[bus - 1]!, minus[bus]!, { lengthM: 0.1 });
        }
        for (const [one, other, isPlus] of more) {
          const side = isPlus ? plus : minus;
          if (one % buses !== other % buses)
            build.cable(side[one % buses]!, side[other % buses]!, { lengthM: 0.3 });
        }
        for (let battery = 0; battery < batteries; battery++) {
          const { positive, negative } = build.battery();
          build.cable(positive, plus[0]!, { lengthM: 0.1 * (battery + 1) });
          build.cable(minus[0]!, negative, { lengthM: 0.1 });
        }
        for (const [at, back, currentA] of loads) {
          const { positive, negative } = build.load(currentA);
          build.cable(plus[at % buses]!, positive, { lengthM: 0.2 });
          build.cable(negative, minus[back % buses]!, { lengthM: 0.2 });
        }
        const network = build.network();
        const expected = solvedOneByOne(network);
        aloneIn(network).conductors.forEach((alone, conductor) => {
          // Copper that gets warm takes a little less of a share; the solver's own error is far smaller.
          expect(alone?.worst.currentA ?? 0).toBeCloseTo(expected[conductor]!, 1);
        });
      }),
      { numRuns: sampledRuns(60) },
    );
  });

  it("is whole on every part and conductor between a device and its bank, and on none beside", () => {
    const build = sampleNetwork();
    const battery = build.battery();
    const off = build.disconnect();
    const [plus, minus] = [build.busBar(), build.busBar()];
    const [small, great] = [build.load(5), build.load(90)];
    const feed = build.cable(battery.positive, off.line);
    build.cable(off.load, plus);
    const back = build.cable(minus, battery.negative);
    const toSmall = build.cable(plus, small.positive);
    build.cable(small.negative, minus);
    build.cable(plus, great.positive);
    build.cable(great.negative, minus);
    const { conductors, feeds } = aloneIn(build.network());
    const whole = { currentA: 90, alone: great.part };
    expect(conductors[feed]).toEqual({ worst: whole, design: whole });
    expect(conductors[back]?.worst).toEqual(whole);
    expect(conductors[toSmall]?.worst).toEqual({ currentA: 5, alone: small.part });
    expect([battery.part, off.part].map((part) => feeds[part]?.worst)).toEqual([whole, whole]);
  });

  it("does not pass a disconnect that no scenario closes, and is not halved by it", () => {
    const build = sampleNetwork();
    const [house, starter] = [build.battery(), build.battery()];
    const lend = build.disconnect();
    const [plus, minus] = [build.busBar(), build.busBar()];
    const load = build.load(90);
    const own = build.cable(house.positive, plus);
    build.cable(minus, house.negative);
    const lent = build.cable(starter.positive, lend.line);
    build.cable(lend.load, plus);
    build.cable(minus, starter.negative);
    build.cable(plus, load.positive);
    build.cable(load.negative, minus);
    const network = build.network();
    const scenarios = network.scenarios.map((one) => ({ ...one, on: one.on.with(lend.part, false) }));
    const { conductors, feeds } = aloneIn({ ...network, scenarios });
    expect(conductors[own]?.worst.currentA).toBe(90);
    expect(conductors[lent]).toBeUndefined();
    expect(feeds[starter.part]).toBeUndefined();
  });

  it("is whole on a battery without a disconnect, and its share by Ohm's law on one behind a closed disconnect", () => {
    const build = sampleNetwork();
    const load = build.load(90);
    const [plus, minus] = [build.busBar(), build.busBar()];
    const off = build.disconnect();
    // Ohm's law: leads of 1 mm have no resistance to speak of, so 90 A divide as 1/4 mΩ to 1/1 mΩ, 18 A and 72 A.
    const source = statedInPlan(undefined);
    const internal = (ohm: number) => ({ stated: true, lowOhm: ohm, highOhm: ohm, source }) as const;
    const always = build.battery({ internal: internal(0.004) });
    const behind = build.battery({ internal: internal(0.001) });
    const short = { lengthM: 0.001 };
    const own = build.cable(always.positive, plus, short);
    const ownBack = build.cable(minus, always.negative, short);
    const toSwitch = build.cable(behind.positive, off.line, short);
    const fromSwitch = build.cable(off.load, plus, short);
    const back = build.cable(minus, behind.negative, short);
    build.cable(plus, load.positive);
    build.cable(load.negative, minus);
    const { conductors, feeds } = aloneIn(build.network());
    for (const conductor of [own, ownBack]) expect(conductors[conductor]?.worst.currentA).toBe(90);
    expect(feeds[always.part]?.worst.currentA).toBe(90);
    for (const conductor of [toSwitch, fromSwitch, back])
      expect(conductors[conductor]?.worst.currentA).toBeCloseTo(72, 0);
    expect(feeds[behind.part]?.worst.currentA).toBeCloseTo(72, 0);
    expect(feeds[off.part]?.worst.currentA).toBeCloseTo(72, 0);
  });

  it("is shared by two batteries that a disconnect each connects, since without both nothing runs", () => {
    const build = sampleNetwork();
    const load = build.load(90);
    const leads = [build.battery(), build.battery()].map(({ positive, negative }) => {
      const off = build.disconnect();
      build.cable(negative, load.negative);
      build.cable(off.load, load.positive);
      return build.cable(positive, off.line);
    });
    const { conductors } = aloneIn(build.network());
    for (const lead of leads) expect(conductors[lead]?.worst.currentA).toBeCloseTo(45, 6);
  });

  it("is whole on each input of a selector switch", () => {
    const build = sampleNetwork();
    const load = build.load(90);
    const selector = build.selectorSwitch();
    build.cable(selector.common, load.positive);
    const leads = [build.battery(), build.battery()].map(({ positive, negative }, at) => {
      build.cable(negative, load.negative);
      return build.cable(positive, at === 0 ? selector.input1 : selector.input2);
    });
    const { conductors } = aloneIn(build.network());
    for (const lead of leads) expect(conductors[lead]?.worst.currentA).toBe(90);
  });
});
