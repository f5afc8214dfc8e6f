import { sampleNetwork } from "../../../library/analysis/network/sample-network.tester.ts";
import type { Draw, Network, Part } from "../../../library/model/network.ts";
import type { Conductor } from "../../../library/model/run.ts";
import type { AwgSize, Mm2Size } from "../../../library/plan/sizes.ts";

/**
 * A random build: banks in series and in parallel, rings and trees of cables, loads of every kind, sources with limits, and
 * systems of other voltages behind chargers. The same seed gives the same network, on any machine.
 */
export function randomNetwork(seed: number): Network {
  const random = randomNumbers(seed);
  const size = Math.round(5 * 60 ** random());
  return randomNetworkOf(Math.min(300, size), random);
}

/** With about this many branches: conductors, devices, and resistances inside parts. */
export function randomNetworkOf(branches: number, random: () => number): Network {
  const build = sampleNetwork();
  const draws = new Map<number, Draw>();
  const open = new Set<number>();
  const selected = new Map<number, readonly string[]>();
  const between = (low: number, high: number) => low * (high / low) ** random();
  const chance = (probability: number) => random() < probability;
  const oneOf = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  let count = 0;

  function cable(from: number, to: number, lengthM: number, conductor: Conductor): void {
    build.cable(from, to, { lengthM, conductor, engineSpace: chance(0.2) });
    count += 1;
  }
  const thick = (): Conductor =>
    chance(0.7)
      ? { system: "awg", awg: oneOf<AwgSize>([4, 2, 1, "1/0", "2/0", "4/0"]), parallel: chance(0.1) ? 2 : 1 }
      : { system: "metric", mm2: oneOf<Mm2Size>([16, 25, 35, 50, 95]), parallel: 1 };
  const thin = (): Conductor =>
    chance(0.7)
      ? { system: "awg", awg: oneOf<AwgSize>([16, 14, 12, 10, 8]), parallel: 1 }
      : { system: "metric", mm2: oneOf<Mm2Size>([1.5, 2.5, 4, 6]), parallel: 1 };

  /** A bank with its bus bars, and the parts wired to it. */
  function system(
    blocks: number,
    upTo: number,
  ): { plus: number[]; minus: number[]; outputV: number; restV: number } {
    const blockV = between(12.2, 13.3);
    const restV = blocks * blockV;
    const plus = [build.busBar()];
    const minus = [build.busBar()];
    for (let string = chance(0.3) ? 2 : 1; string > 0; string--) {
      let positive = plus[0]!;
      for (let block = 0; block < blocks; block++) {
        const ohm = between(0.001, 0.012);
        const battery = build.battery({
          nominalV: blockV * between(0.995, 1.005),
          internal: { stated: true, lowOhm: ohm, highOhm: ohm, source: unconfirmed },
        });
        count += 1;
        cable(battery.positive, positive, between(0.1, 2), thick());
        positive = battery.negative;
      }
      if (chance(0.4)) {
        const shunt = build.shunt(between(0.00005, 0.0005));
        count += 1;
        cable(positive, shunt.batterySide, between(0.1, 1), thick());
        cable(shunt.systemSide, minus[0]!, between(0.1, 1), thick());
      } else cable(positive, minus[0]!, between(0.1, 2), thick());
    }
    const outputV = restV * between(1.02, 1.15);
    if (chance(0.7)) {
      const behind = build.busBar();
      if (chance(0.25)) selector(plus[0]!, minus[0]!, behind, blocks * blockV);
      else inLine(plus[0]!, behind);
      plus.push(behind);
    }
    if (chance(0.15)) {
      const starter = build.load(0, { statedBy: "starterMotor" });
      draws.set(starter.part, { as: "motor", runningA: 0, startingA: between(60, 250) });
      count += 1;
      cable(starter.positive, plus[0]!, between(0.5, 3), thick());
      cable(starter.negative, minus[0]!, between(0.5, 3), thick());
    }
    if (chance(0.5)) {
      const alternator = build.alternator({ ratedA: between(20, 200), outputV });
      count += 1;
      cable(alternator.positive, oneOf(plus), between(1, 6), thick());
      cable(alternator.negative, minus[0]!, between(1, 6), thick());
    }
    if (chance(0.4)) {
      const shore = build.shoreCharger(between(5, 60), outputV);
      count += 1;
      cable(shore.positive, oneOf(plus), between(1, 4), thick());
      cable(shore.negative, oneOf(minus), between(1, 4), thick());
    }
    if (chance(0.5)) solar(plus, minus, outputV, blocks);
    while (count < upTo) grow(plus, minus, restV);
    return { plus, minus, outputV, restV };
  }

  /** A switch, relay, fuse or breaker between two bus bars. */
  function inLine(from: number, to: number): void {
    const kind = oneOf(["disconnect", "relay", "fuseHolder", "breaker"] as const);
    const isDevice = kind === "fuseHolder" || kind === "breaker";
    const part = isDevice ? build[kind](chance(0.3) ? 0 : between(0.0001, 0.003)) : build[kind]();
    if (isDevice) count += 1;
    // Fuses are whole; a breaker may be open by hand as a switch may.
    if (kind !== "fuseHolder" && chance(0.25)) open.add(part.part);
    cable(from, part.line, between(0.2, 2), thick());
    cable(part.load, to, between(0.2, 2), thick());
  }

  /** A selector switch between the bank, a battery in reserve, and the loads, in any of its positions. */
  function selector(plus: number, minus: number, behind: number, nominalV: number): void {
    const ohm = between(0.001, 0.012);
    const reserve = build.battery({
      nominalV: nominalV * between(0.97, 1.03),
      internal: { stated: true, lowOhm: ohm, highOhm: ohm, source: unconfirmed },
    });
    count += 1;
    const part = build.selectorSwitch();
    cable(plus, part.input1, between(0.2, 2), thick());
    cable(reserve.positive, part.input2, between(0.2, 2), thick());
    cable(reserve.negative, minus, between(0.2, 2), thick());
    cable(part.common, behind, between(0.2, 2), thick());
    const position = oneOf(["all", "input1", "input2", "off"] as const);
    if (position === "off") open.add(part.part);
    else if (position !== "all") selected.set(part.part, [position]);
  }

  function solar(plus: readonly number[], minus: readonly number[], outputV: number, blocks: number): void {
    const maxPowerA = between(3, 12);
    const panels = {
      openCircuitV: between(21, 24),
      maxPowerV: between(17, 19),
      maxPowerA,
      shortCircuitA: maxPowerA * between(1.03, 1.1),
    };
    const tracking = chance(0.7);
    const array = build.solarArray({
      ...panels,
      series: blocks + (tracking && chance(0.5) ? 1 : 0),
      parallel: chance(0.3) ? 2 : 1,
    });
    const controller = build.solarController(between(5, 40), { tracking, outputV });
    count += 2;
    cable(array.positive, controller.solarPositive, between(2, 12), thin());
    cable(array.negative, controller.solarNegative, between(2, 12), thin());
    cable(controller.positive, oneOf(plus), between(0.5, 3), thick());
    cable(controller.negative, oneOf(minus), between(0.5, 3), thick());
  }

  /** One more panel, ring or load. */
  function grow(plus: number[], minus: number[], systemV: number): void {
    const what = random();
    if (what < 0.06) {
      const panel = build.panel();
      cable(oneOf(plus), panel.feed, between(0.5, 6), thick());
      cable(oneOf(minus), panel.negative, between(0.5, 6), thick());
      plus.push(panel.branch);
      minus.push(panel.negative);
    } else if (what < 0.11) {
      const far = build.busBar();
      cable(oneOf(plus), far, between(1, 8), thick());
      if (chance(0.5)) cable(oneOf(plus), far, between(1, 8), thick());
      plus.push(far);
    } else if (what < 0.14) {
      const chassis = build.chassis(between(0.0002, 0.005));
      count += 1;
      cable(chassis.bond, oneOf(minus), between(0.2, 2), thick());
      minus.push(chassis.metal);
    } else if (what < 0.16) {
      cable(oneOf(plus), oneOf(plus), between(0.5, 5), thick());
    } else if (what < 0.2) {
      const far = chance(0.5) ? oneOf(plus) : build.busBar();
      inLine(oneOf(plus), far);
      if (!plus.includes(far)) plus.push(far);
    } else load(oneOf(plus), oneOf(minus), systemV);
  }

  function load(plus: number, minus: number, systemV: number): void {
    const currentA = between(0.2, 12);
    const kind = random();
    if (kind < 0.06) {
      const inverter = build.inverter({ loadW: currentA * systemV * between(1, 8), idleW: between(2, 20) });
      count += 1;
      cable(plus, inverter.positive, between(0.4, 2), thick());
      cable(inverter.negative, minus, between(0.4, 2), thick());
      return;
    }
    const device = build.load();
    count += 1;
    draws.set(
      device.part,
      kind < 0.4
        ? { as: "power", powerW: currentA * systemV }
        : kind < 0.65
          ? { as: "current", currentA }
          : kind < 0.85
            ? { as: "resistance", ohm: systemV / currentA }
            : { as: "motor", runningA: currentA, startingA: 4 * currentA },
    );
    const wire = thin();
    cable(plus, device.positive, between(0.5, 6), wire);
    cable(device.negative, minus, between(0.5, 6), wire);
  }

  const house = system(chance(0.3) ? 2 : 1, branches * (chance(0.4) ? 0.6 : 1));
  while (count < branches) {
    const other = system(chance(0.5) ? 2 : 1, Math.min(branches, count + branches * between(0.1, 0.5)));
    const isolated = chance(0.5);
    const charger = build.dcDcCharger({
      outputA: between(5, 30),
      isolated,
      outputV: other.outputV,
      ...(chance(0.4) ? { inputMaxA: between(5, 30) } : {}),
    });
    count += 2;
    cable(oneOf(house.plus), charger.inputPositive, between(0.5, 6), thick());
    cable(oneOf(house.minus), charger.inputNegative, between(0.5, 6), thick());
    cable(charger.outputPositive, oneOf(other.plus), between(0.5, 6), thick());
    cable(charger.outputNegative, oneOf(other.minus), between(0.5, 6), thick());
  }
  const plain = build.network();
  const parts = plain.parts.map((part): Part => {
    const own = draws.get(part.index);
    return part.kind === "load" && own ? { ...part, draws: own } : part;
  });
  const isStarting = chance(0.3);
  const scenario = {
    ...plain.scenarios[0]!,
    on: parts.map(({ index, kind }) => !open.has(index) && (kind !== "load" || !chance(0.15))),
    starting: parts.map(
      (part) => part.kind === "load" && part.draws.as === "motor" && isStarting && chance(0.3),
    ),
    selected,
    sunShare: chance(0.2) ? 0 : random(),
    momentary: isStarting,
  };
  return { ...plain, parts, scenarios: [scenario] };
}

const unconfirmed = {
  document: "a random network",
  section: "",
  authority: "common practice",
  confirmed: "memory",
} as const;

/** Numbers from 0 up to 1 that look random and are the same for the same seed (mulberry32). */
export function randomNumbers(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
