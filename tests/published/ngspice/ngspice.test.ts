import { describe, expect, it } from "vitest";
import { isStarterMotor } from "../../../library/model/part-roles.ts";
import { isSwitch } from "../../../library/model/switch-positions.ts";
import { published } from "../published-data.ts";
import { askNgspice, type ComparedNetwork, comparedNetwork } from "./compared-network.ts";
import { randomNetwork } from "./random-network.ts";
import type { Recorded } from "./record.ts";
import { ngspiceVersion } from "./run-ngspice.ts";

const recorded = published<Recorded>("ngspice/recorded.json");
const installed = ngspiceVersion();

/** Relative to each voltage against its island's zero. Nodes at that zero's own potential must agree to a nanovolt. */
const relative = 1e-6;
const leastV = 1e-9;

describe(`random networks as ngspice ${recorded.ngspice} answers them`, () => {
  it("are at least 200, of 5 to 300 branches, with every kind of part among them", () => {
    const sizes = recorded.networks.map(({ branches }) => branches);
    expect(sizes.length).toBeGreaterThanOrEqual(200);
    expect(Math.min(...sizes)).toBeLessThanOrEqual(8);
    expect(Math.max(...sizes)).toBeGreaterThanOrEqual(250);
    const kinds = new Set(
      recorded.networks.flatMap(({ seed }) => randomNetwork(seed).parts.map(({ kind }) => kind)),
    );
    expect([...kinds].sort()).toEqual([
      "alternator",
      "battery",
      "breaker",
      "busBar",
      "chassis",
      "dcDcCharger",
      "disconnect",
      "fuseHolder",
      "fusePanel",
      "inverter",
      "load",
      "relay",
      "selectorSwitch",
      "shoreCharger",
      "shunt",
      "solarArray",
      "solarController",
    ]);
  });

  it("switches are in each of their positions, and engines are cranked", () => {
    const positions = new Set<string>();
    for (const { seed } of recorded.networks) {
      const { parts, scenarios } = randomNetwork(seed);
      const { on, starting, selected } = scenarios[0]!;
      for (const part of parts) {
        const at = selected?.get(part.index)?.join() ?? "closed";
        if (isSwitch(part)) positions.add(`${part.kind} ${on[part.index] ? at : "open"}`);
        if (isStarterMotor(part) && starting[part.index]) positions.add("starterMotor cranking");
      }
    }
    expect([...positions].sort()).toEqual([
      ...["breaker closed", "breaker open", "disconnect closed", "disconnect open"],
      ...["relay closed", "relay open"],
      ...["selectorSwitch closed", "selectorSwitch input1", "selectorSwitch input2", "selectorSwitch open"],
      "starterMotor cranking",
    ]);
  });

  it("few were left out: those without an operating point, and those that ngspice could not solve", () => {
    const all = recorded.networks.length + recorded.unsolved.length + recorded.unanswered.length;
    expect(recorded.unsolved.length + recorded.unanswered.length).toBeLessThanOrEqual(0.04 * all);
    for (const seed of recorded.unsolved) expect(comparedNetwork(randomNetwork(seed))).toBeUndefined();
  });

  it.each(recorded.networks)("seed $seed, $branches branches", ({ seed, branches, voltages }) => {
    const compared = solved(seed);
    expect(compared.branches.length).toBe(branches);
    expectSameVoltages(compared, voltages);
  });
});

/** The test set-up installs it if possible, and reports it if not. */
const live = installed ? recorded.networks.filter((_, index) => index % 6 === 0) : [];

describe(`live ngspice ${installed ?? "(none is installed: compared with recorded answers only)"}`, () => {
  it("is asked wherever it is installed", () => expect(live.length > 0).toBe(installed !== undefined));

  it.each(live)("seed $seed, $branches branches", ({ seed, hintDigits }) => {
    const compared = solved(seed);
    // Another version may need a finer hint than the recorded one did.
    const answer = askNgspice(compared, hintDigits);
    expect(answer, "an answer of ngspice in which currents sum up to nothing").toBeDefined();
    expectSameVoltages(compared, answer?.voltages ?? []);
  });
});

function solved(seed: number): ComparedNetwork {
  const compared = comparedNetwork(randomNetwork(seed));
  if (!compared) throw new Error(`No operating point for seed ${seed}.`);
  return compared;
}

function expectSameVoltages({ ourV, terminals }: ComparedNetwork, theirV: readonly number[]): void {
  expect(theirV.length).toBe(terminals.length);
  const different = ourV.flatMap((voltageV, index) => {
    const theirs = theirV[index]!;
    const allowedV = relative * Math.abs(theirs) + leastV;
    return Math.abs(voltageV - theirs) <= allowedV ? [] : [{ terminal: terminals[index], voltageV, theirs }];
  });
  expect(different).toEqual([]);
}
