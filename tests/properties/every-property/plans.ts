import { isDeepStrictEqual } from "node:util";
import { testWorld } from "../../../library/analysis/energy/world.tester.ts";
import { type Judgement, judge } from "../../../library/judge.ts";
import type { PlanRecord } from "../../../library/model/record.ts";
import { type Made, recordsOf } from "../../../library/model/sample-plan.tester.ts";
import {
  alternator,
  battery,
  breaker,
  build,
  busBar,
  type CircuitOptions,
  cable,
  channel,
  chassis,
  circuit,
  compartment,
  dcDcCharger,
  disconnect,
  fuseHolder,
  fusePanel,
  inverter,
  load,
  motor,
  part,
  period,
  relay,
  scenario,
  selectorSwitch,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
  starterMotor,
  surface,
} from "../../../library/plan/index.ts";
import { continueNumberingAt } from "../../../library/plan/numbering.ts";

/** The results of all calls of a plan, in any order, by the names that the cases give them. */
export type Plan = Readonly<Record<string, Made>>;

/** The values of properties, by the name of a call and the path within its input: "house.maxChargeA". */
export type Values = Readonly<Record<string, unknown>>;

/** Circuits alone, without a network. */
export function alone(): Plan {
  continueNumberingAt(0);
  return {
    settings: build({ voltage: 12, insulationC: 75 }),
    lamp: circuit({ load: 25, oneWayM: 4, gauge: 10, protect: 30 }),
    other: circuit({ load: 5, oneWayM: 4, gauge: 14, protect: 10 }),
  };
}

/** A small network: a bank behind its main fuse, two bus bars, and what is connected to them. */
export function van() {
  continueNumberingAt(0);
  const settings = build({ voltage: 12, insulationC: 105 });
  const house = battery({ chemistry: "LiFePO4", capacityAh: 200, maxDischargeA: 250, maxChargeA: 150 });
  const plus = busBar({ side: "positive", ratedA: 300 });
  const minus = busBar({ side: "negative", ratedA: 300 });
  const feed = cable({
    ...{ from: house.positive, to: plus.stud, lengthM: 0.5, gauge: 2 },
    protect: { ratingA: 125, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 5 },
  });
  const houseReturn = cable({ from: minus.stud, to: house.negative, lengthM: 0.5, gauge: 2 });
  const lamp = circuit({
    ...{ from: plus.stud, returnTo: minus.stud, load: 25, oneWayM: 4, gauge: 10, protect: 30 },
  });
  const heater = load({ currentA: 25 });
  const heaterFeed = circuit({
    ...{ from: plus.stud, returnTo: minus.stud, to: heater, oneWayM: 4, gauge: 10, protect: 30 },
  });
  const winch = load({ currentA: 25 });
  const kettle = inverter({ continuousW: 300 });
  const winchFeed = cable({ from: plus.stud, to: winch.positive, lengthM: 4, gauge: 10, protect: 30 });
  const winchReturn = cable({ from: minus.stud, to: winch.negative, lengthM: 4, gauge: 10 });
  return {
    ...{ settings, house, plus, minus, feed, houseReturn, lamp, heater, heaterFeed },
    ...{ winch, kettle, winchFeed, winchReturn },
  };
}

/** The van with two more batteries: on a circuit and on a cable with a fuse at each end. */
export function threeBanks() {
  const made = van();
  const { plus, minus } = made;
  const spare = battery({ chemistry: "LiFePO4", capacityAh: 200, maxDischargeA: 250, maxChargeA: 150 });
  const third = battery({ chemistry: "LiFePO4", capacityAh: 200, maxDischargeA: 250, maxChargeA: 150 });
  const link = circuit({
    ...{ from: plus.stud, returnTo: minus.stud, to: spare, oneWayM: 1, gauge: 10 },
    ...{ protect: 30, protectFarEnd: 30 },
  });
  const thirdPlus = busBar({ side: "positive" });
  const thirdFeed = cable({
    ...{ from: third.positive, to: thirdPlus.stud, lengthM: 0.5, gauge: 2 },
    protect: { ratingA: 125, family: "UL 248-15 Class T", interruptingA: 20_000, letThroughA2s: 1_000 },
  });
  const strap = cable({
    ...{ from: plus.stud, to: thirdPlus.stud, lengthM: 1, gauge: 10, protect: 30, protectFarEnd: 30 },
  });
  const strapReturn = cable({ from: third.negative, to: minus.stud, lengthM: 1, gauge: 10 });
  return { ...made, spare, third, link, thirdPlus, thirdFeed, strap, strapReturn };
}

/** The van with a fuse or breaker of its own, and a pump behind it. */
export function vanWithDevice(make: typeof fuseHolder | typeof breaker) {
  const made = van();
  const { plus, minus } = made;
  const device = make({ ratingA: 30, on: plus.stud });
  const pump = motor({ runningA: 25, startingA: 60 });
  const pumpFeed = cable({ from: device.load, to: pump.positive, lengthM: 4, gauge: 10 });
  const pumpReturn = cable({ from: pump.negative, to: minus.stud, lengthM: 4, gauge: 10 });
  return { ...made, device, pump, pumpFeed, pumpReturn };
}

/** The van with the metal of its body, to which nothing is connected. */
export function vanWithMetal() {
  const made = van();
  return { ...made, block: chassis({ milliohm: 0.3 }) };
}

/** A boat with every kind of part. */
export function boat(ofLamp: Pick<CircuitOptions, "use"> = {}) {
  continueNumberingAt(0);
  const settings = build({ voltage: 12, insulationC: 105 });
  const house = battery({ chemistry: "LiFePO4", capacityAh: 200, maxDischargeA: 250, maxChargeA: 150 });
  const start = battery({ chemistry: "AGM", capacityAh: 95, maxDischargeA: 600, maxChargeA: 100 });
  const mainFuse = fuseHolder({
    ...{ ratingA: 200, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 },
    on: house.positive,
  });
  const mainSwitch = disconnect({ ratedA: 300 });
  const monitor = shunt({ ratedA: 300 });
  const plus = busBar({ side: "positive", ratedA: 300, studs: 12 });
  const minus = busBar({ side: "negative", ratedA: 300, studs: 12 });
  const fuseToSwitch = cable({ from: mainFuse.load, to: mainSwitch.line, lengthM: 0.5, gauge: "2/0" });
  const switchToBus = cable({ from: mainSwitch.load, to: plus.stud, lengthM: 0.5, gauge: "2/0" });
  const houseReturn = cable({
    ...{ from: house.negative, to: monitor.batterySide, lengthM: 0.5, gauge: "2/0" },
  });
  const monitorReturn = cable({ from: monitor.systemSide, to: minus.stud, lengthM: 0.5, gauge: "2/0" });

  const panel = fusePanel({ positions: 6, ratedA: 100, branchRatedA: 30 });
  const panelFeed = circuit({
    ...{ from: plus.stud, returnTo: minus.stud, to: panel, oneWayM: 2, gauge: 4, continuous: false },
    protect: { ratingA: 80, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 5 },
  });
  const lamp = circuit({ from: panel.branch, load: 8, oneWayM: 4, gauge: 12, protect: 10, ...ofLamp });
  const heater = load({ currentA: 10 });
  const heaterFeed = circuit({ from: panel.branch, to: heater, oneWayM: 3, gauge: 12, protect: 15 });
  const pumpBreaker = breaker({ ratingA: 15, interruptingA: 5_000, ratedV: 48, on: panel.branch });
  const pump = motor({ runningA: 6, startingA: 20 });
  const pumpFeed = cable({ from: pumpBreaker.load, to: pump.positive, lengthM: 3, gauge: 12 });
  const pumpReturn = cable({ from: pump.negative, to: panel.negative, lengthM: 3, gauge: 12 });

  const kettle = inverter({ continuousW: 800, surgeW: 1_600 });
  const kettleFeed = circuit({
    ...{ from: plus.stud, returnTo: minus.stud, to: kettle, oneWayM: 1, gauge: 2 },
    protect: { ratingA: 125, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 5 },
  });
  const mains = shoreCharger({ outputA: 30 });
  const mainsFeed = circuit({
    ...{ from: plus.stud, returnTo: minus.stud, to: mains, oneWayM: 2, gauge: 8, protect: 50 },
  });
  const modules = solarArray({
    ...{ openCircuitV: 22, shortCircuitA: 10, maxPowerV: 18, maxPowerA: 9, series: 2 },
  });
  const sun = solarController({ maxInputV: 75, outputA: 30 });
  const sunIn = circuit({
    ...{ from: modules.positive, returnTo: modules.negative, to: sun, oneWayM: 4, gauge: 10 },
  });
  const sunOut = cable({ from: sun.positive, to: plus.stud, lengthM: 2, gauge: 8, protectFarEnd: 40 });
  const sunReturn = cable({ from: sun.negative, to: minus.stud, lengthM: 2, gauge: 8 });

  const block = chassis({ milliohm: 0.3 });
  const engine = alternator({ ratedA: 90 });
  const engineFeed = cable({
    ...{ from: engine.positive, to: start.positive, lengthM: 1, gauge: 4, protectFarEnd: 100 },
  });
  const engineReturn = cable({ from: engine.negative, to: block.metal, lengthM: 0.5, gauge: 4 });
  const startReturn = cable({ from: start.negative, to: block.metal, lengthM: 0.5, gauge: "2/0" });
  const bond = cable({ from: minus.stud, to: block.bond, lengthM: 0.5, gauge: 4 });
  const selector = selectorSwitch({ ratedA: 300 });
  const starter = starterMotor({ crankingA: 200 });
  const crankFeed = cable({ from: start.positive, to: selector.input1, lengthM: 1, gauge: "2/0" });
  const spareFeed = cable({
    ...{ from: plus.stud, to: selector.input2, lengthM: 1, gauge: "2/0", protect: 200 },
  });
  const starterFeed = cable({ from: selector.common, to: starter.positive, lengthM: 1, gauge: "2/0" });
  const starterReturn = cable({ from: starter.negative, to: block.metal, lengthM: 0.5, gauge: "2/0" });
  const booster = dcDcCharger({ outputA: 20 });
  const boosterFeed = circuit({
    ...{ from: start.positive, returnTo: block.metal, to: booster, oneWayM: 1, gauge: 8, protect: 40 },
  });
  const boosterOut = cable({
    ...{ from: booster.outputPositive, to: plus.stud, lengthM: 2, gauge: 8, protectFarEnd: 40 },
  });
  const combiner = relay({ ratedA: 140 });
  const plug = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"] }], ratedA: 60 });
  const toCombiner = cable({ from: plus.stud, to: combiner.line, lengthM: 1, gauge: 6, protect: 60 });
  const toPlug = cable({ from: combiner.load, to: plug.in, lengthM: 1, gauge: 6 });
  const winch = load({ currentA: 40 });
  const winchFeed = cable({ from: plug.out, to: winch.positive, lengthM: 1, gauge: 6 });
  const winchReturn = cable({ from: winch.negative, to: minus.stud, lengthM: 2, gauge: 6 });
  return {
    ...{ settings, house, start, mainFuse, mainSwitch, monitor, plus, minus },
    ...{ fuseToSwitch, switchToBus, houseReturn, monitorReturn },
    ...{ panel, panelFeed, lamp, heater, heaterFeed, pumpBreaker, pump, pumpFeed, pumpReturn },
    ...{ kettle, kettleFeed, mains, mainsFeed, modules, sun, sunIn, sunOut, sunReturn },
    ...{ block, engine, engineFeed, engineReturn, startReturn, bond, selector, starter },
    ...{ crankFeed, spareFeed, starterFeed, starterReturn, booster, boosterFeed, boosterOut },
    ...{ combiner, plug, toCombiner, toPlug, winch, winchFeed, winchReturn },
  };
}

/** The boat with a scenario of its own, in which everything is on. */
export function boatWithScenario() {
  const made = boat();
  return { ...made, state: scenario({ name: "at anchor" }) };
}

/** The boat with its parts on two boards, between them a trunking, and runs whose lengths follow from there. */
export function boatOnBoards() {
  const made = boat();
  const locker = compartment({ walls: [{ material: "plastic", areaM2: 1 }], outsideC: 30 });
  const cupboard = compartment({ ambientC: 50 });
  const board = surface({ size: { widthMm: 3_000, heightMm: 2_000 }, carriesKg: 50 });
  const wall = surface({ size: { widthMm: 3_000, heightMm: 2_000 } });
  const trunking = channel({
    on: board,
    path: [
      { leftMm: 0, topMm: 500 },
      { leftMm: 3_000, topMm: 500 },
    ],
  });
  const hole = channel({
    ...{ way: "hole", grommet: true, lengthM: 0.02 },
    ...{ from: { on: board, leftMm: 3_000, topMm: 500 }, to: { on: wall, leftMm: 0, topMm: 0 } },
  });
  const mast = channel({ from: { on: board, leftMm: 0, topMm: 0 }, lengthM: 2 });
  const boom = channel({ from: { on: wall, leftMm: 100, topMm: 100 }, lengthM: 3 });
  const studs = [
    { leftMm: 20, topMm: 20 },
    { leftMm: 180, topMm: 20 },
  ];
  const far = busBar({
    ...{ side: "positive", terminalsAt: { stud: studs } },
    ...{ at: { on: board, leftMm: 200, topMm: 300 }, size: { widthMm: 200, heightMm: 40 } },
  });
  const near = busBar({
    ...{ side: "negative", terminalsAt: { stud: studs } },
    ...{ at: { on: board, leftMm: 200, topMm: 600 }, size: { widthMm: 200, heightMm: 40 } },
  });
  const toFar = cable({ from: made.plus.stud, to: far.stud, lengthM: 1, gauge: 6, protect: 60 });
  const toNear = cable({ from: near.stud, to: made.minus.stud, lengthM: 1, gauge: 6 });
  const beacon = load({ currentA: 20, at: { on: board, leftMm: 2_500, topMm: 300 } });
  const beaconFeed = cable({ from: far.stud, to: beacon.positive, gauge: 10, protect: 30 });
  const beaconReturn = cable({ from: beacon.negative, to: near.stud, gauge: 10 });
  const light = circuit({
    ...{ from: far.stud, returnTo: near.stud, load: 20, gauge: 10, protect: 30 },
    at: { on: wall, leftMm: 500, topMm: 100 },
  });
  const stove = load({ currentA: 20, at: { on: board, leftMm: 2_800, topMm: 1_200 } });
  const stoveFeed = circuit({
    ...{ from: far.stud, returnTo: near.stud, to: stove, gauge: 10, protect: 30 },
  });
  return {
    ...{ ...made, locker, cupboard, board, wall, trunking, hole, mast, boom, far, near, toFar, toNear },
    ...{ beacon, beaconFeed, beaconReturn, light, stove, stoveFeed },
  };
}

/** The hours of the lamp matter in both: it is the greatest load. */
const evening = { fromHour: 17, untilHour: 23 } as const;

/** The van on its bank alone, all year. */
export function vanWithPeriod() {
  const made = van();
  return { ...made, year: period({ name: "year", latitudeDeg: 45, longitudeDeg: 5 }) };
}

/** The boat, all year. */
export function boatWithPeriod() {
  const made = boat({ use: evening });
  return { ...made, year: period({ name: "year", latitudeDeg: 45, longitudeDeg: 5 }) };
}

/** The judgement of a plan with other values; undefined leaves a property out. */
export function judgedWith(plan: Plan, ...given: readonly Values[]): Judgement {
  const written = asWritten.get(plan) ?? judgedAsWritten(plan);
  asWritten.set(plan, written);
  const records = recordsWith(plan, given);
  return isDeepStrictEqual(records, written.records)
    ? written.judgement
    : judge(records, [], written.judgement, testWorld);
}

function judgedAsWritten(plan: Plan): Written {
  const records = recordsWith(plan, []);
  return { records, judgement: judge(records, [], undefined, testWorld) };
}

interface Written {
  readonly records: readonly PlanRecord[];
  readonly judgement: Judgement;
}

/** By plan: the judgement of one with other values reuses the results that are the same. */
const asWritten = new WeakMap<Plan, Written>();

function recordsWith(plan: Plan, given: readonly Values[]): readonly PlanRecord[] {
  const names = namesInOrderOfCalls(plan);
  const records = [...recordsOf(names.map((name) => plan[name]!))];
  for (const values of given)
    for (const [at, value] of Object.entries(values)) {
      const [name, ...path] = at.split(".") as [string, ...string[]];
      const index = names.indexOf(name);
      if (index < 0) throw new Error(`the plan has no ${name}`);
      const { input, ...record } = records[index]!;
      records[index] = { ...record, input: withValue(input, path, value) };
    }
  return records;
}

/** From the numbers of the calls. A call without a name would shift the records of those after it. */
function namesInOrderOfCalls(plan: Plan): readonly string[] {
  const names = Object.keys(plan).sort((one, other) => plan[one]!.id - plan[other]!.id);
  names.forEach((name, index) => {
    if (plan[name]!.id === index) return;
    const before = index === 0 ? "the first call" : `the call after ${names[index - 1]}`;
    throw new Error(`the plan returns nothing for ${before}: give its result a name in the returned object`);
  });
  return names;
}

function withValue(whole: unknown, [first, ...rest]: readonly string[], value: unknown): unknown {
  if (first === undefined) return value;
  if (Array.isArray(whole))
    return whole.map((item, index) => (String(index) === first ? withValue(item, rest, value) : item));
  const { [first]: old, ...others } = (typeof whole === "object" ? whole : {}) as Record<string, unknown>;
  const changed = withValue(old, rest, value);
  return changed === undefined ? others : { ...others, [first]: changed };
}
