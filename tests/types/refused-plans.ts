/*
 * Plans that the compiler must refuse, and similar ones that it must accept. This file is never run: the compiler reports every
 * `@ts-expect-error` without an error below it. compiler-messages.test.ts checks the words of its messages.
 */
import {
  type AwgSize,
  alternator,
  type BuildInput,
  battery,
  build,
  busBar,
  type CableInput,
  type CircuitInput,
  type CircuitOptions,
  cable,
  chassis,
  circuit,
  dcDcCharger,
  disconnect,
  type FedPart,
  fusePanel,
  inverter,
  type LengthInput,
  type LoadInput,
  load,
  type Mm2Size,
  motor,
  type PlannedCircuit,
  type ProtectionInput,
  part,
  type RuleId,
  type SizeInput,
  type SpoolInput,
  scenario,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
  type Terminal,
} from "loomwright";

const rest = { load: 40, oneWayFt: 15 } as const;

// Every size that is made, and no other.
circuit({ ...rest, gauge: 18 });
circuit({ ...rest, gauge: 1 });
circuit({ ...rest, gauge: "1/0" });
circuit({ ...rest, gauge: "4/0" });
circuit({ ...rest, mm2: 0.75 });
circuit({ ...rest, mm2: 150 });
// @ts-expect-error: 20 is thinner than any table goes
circuit({ ...rest, gauge: 20 });
// @ts-expect-error: between two sizes
circuit({ ...rest, gauge: 5 });
// @ts-expect-error: 1/0 is written as text
circuit({ ...rest, gauge: 0 });
// @ts-expect-error: nothing is thicker than 4/0
circuit({ ...rest, gauge: "5/0" });
// @ts-expect-error: a size that is a number is not written as text
circuit({ ...rest, gauge: "4" });
// @ts-expect-error: below the thinnest
circuit({ ...rest, mm2: 0.5 });
// @ts-expect-error: between two sizes
circuit({ ...rest, mm2: 3 });
// @ts-expect-error: above the thickest
circuit({ ...rest, mm2: 185 });
// @ts-expect-error: any number is too wide
circuit({ ...rest, gauge: Number(4) });

// Exactly one of each.
circuit({ loadW: 480, oneWayM: 4.5, mm2: 25 });
circuit({ load: 40, positiveFt: 12, negativeFt: 3, gauge: 4 });
circuit({ load: 40, positiveM: 4, negativeM: 1, mm2: 25 });
// @ts-expect-error: both sizes
circuit({ ...rest, gauge: 4, mm2: 25 });
// @ts-expect-error: no size
circuit({ ...rest });
// @ts-expect-error: both loads
circuit({ load: 40, loadW: 480, oneWayFt: 15, gauge: 4 });
// @ts-expect-error: no load
circuit({ oneWayFt: 15, gauge: 4 });
// @ts-expect-error: no length
circuit({ load: 40, gauge: 4 });
// @ts-expect-error: two lengths
circuit({ load: 40, oneWayFt: 15, oneWayM: 4.5, gauge: 4 });
// @ts-expect-error: one way and both conductors
circuit({ load: 40, oneWayFt: 15, positiveFt: 12, negativeFt: 3, gauge: 4 });
// @ts-expect-error: the negative conductor is missing
circuit({ load: 40, positiveFt: 12, gauge: 4 });
// @ts-expect-error: conductors in two units
circuit({ load: 40, positiveFt: 12, negativeM: 1, gauge: 4 });
// @ts-expect-error: nothing at all
circuit({});
// @ts-expect-error: no argument
circuit();

// The rest of a circuit.
circuit({ ...rest, gauge: 4, voltage: 12 });
circuit({ ...rest, gauge: 4, voltage: 13.8 });
// @ts-expect-error: text
circuit({ ...rest, gauge: 4, voltage: "12" });
// @ts-expect-error: not a rating of the tables
circuit({ ...rest, gauge: 4, insulationC: 100 });
// @ts-expect-error: yes is not true
circuit({ ...rest, gauge: 4, critical: "yes" });
// @ts-expect-error: misspelt
circuit({ ...rest, gauge: 4, protekt: 50 });
// @ts-expect-error: a property of build
circuit({ ...rest, gauge: 4, dropPercent: 5 });
// @ts-expect-error: null says nothing
circuit({ ...rest, gauge: 4, protect: null });

// Protection.
circuit({ ...rest, gauge: 4, protect: { ratingA: 50 } });
circuit({
  ...rest,
  gauge: 4,
  protect: { ratingA: 50, distanceIn: 6 },
  protectFarEnd: { ratingA: 50, distanceMm: 150 },
});
// @ts-expect-error: no rating
circuit({ ...rest, gauge: 4, protect: {} });
// @ts-expect-error: both distances
circuit({ ...rest, gauge: 4, protect: { ratingA: 50, distanceIn: 6, distanceMm: 150 } });
// @ts-expect-error: not a family
circuit({ ...rest, gauge: 4, protect: { ratingA: 50, family: "glass" } });

// Accepted findings.
circuit({ ...rest, gauge: 4, accept: { "conductor/voltage-drop": "in summer only" } });
// @ts-expect-error: no such rule
circuit({ ...rest, gauge: 4, accept: { "conductor/voltage-drap": "in summer only" } });
// @ts-expect-error: a plan that cannot be read cannot be accepted
circuit({ ...rest, gauge: 4, accept: { "plan/invalid-value": "in summer only" } });
// @ts-expect-error: the reason is text
circuit({ ...rest, gauge: 4, accept: { "conductor/voltage-drop": true } });

// Build.
build({});
build({ voltage: 24, insulationC: 105, dropPercent: 5 });
// @ts-expect-error: findings are accepted where they are, in the circuit
build({ accept: { "conductor/voltage-drop": "in summer only" } });
// @ts-expect-error: misspelt
build({ ambient: 40 });

// Returned objects are frozen.
const heater = circuit({ ...rest, gauge: 4 });
// @ts-expect-error: read only
heater.name = "Heater";
// @ts-expect-error: read only
build({}).voltage = 24;

// People's own functions.
const lamp = (name: string, length: LengthInput, size: SizeInput): PlannedCircuit =>
  circuit({ name, loadW: 6, protect: 5, ...length, ...size });
lamp("Reading lamp", { oneWayM: 3 }, { mm2: 1.5 });
lamp("Reading lamp", { positiveFt: 3, negativeFt: 1 }, { gauge: 16 });
// @ts-expect-error: both lengths
lamp("Reading lamp", { oneWayM: 3, oneWayFt: 9 }, { gauge: 16 });
const wired = (load: LoadInput, options: CircuitOptions) =>
  circuit({ ...load, ...options, oneWayFt: 3, gauge: 4 });
wired({ loadW: 60 }, { critical: true });
const inputs: readonly CircuitInput[] = [
  { ...rest, gauge: 4 },
  { loadW: 5, oneWayM: 2, mm2: 1 },
];
inputs.map(circuit);
const sizes: readonly [AwgSize, Mm2Size] = [4, 25];
circuit({ ...rest, gauge: sizes[0] });
const fuse: ProtectionInput = { ratingA: 5, distanceMm: 90 };
circuit({ ...rest, gauge: 4, protect: fuse });
const settings: BuildInput = { voltage: 12 };
build(settings);
const rule: RuleId = "conductor/ampacity";
circuit({ ...rest, gauge: 4, accept: { [rule]: "short bursts" } });

// A network: every part, and cables between terminals that may be connected.
build({ lowestC: -10 });
const block = { chemistry: "LiFePO4", capacityAh: 200, nominalV: 12.8, source: "data sheet p. 3" } as const;
const house = battery(block);
const second = battery({ ...block, name: "second" });
const panel = fusePanel({ positions: 12, ratedA: 100, branchRatedA: 30, negativeBus: true });
const bus = busBar({ ratedA: 250, studs: 4 });
const plus = busBar({ side: "positive" });
const minus = busBar({ side: "negative" });
const cutOff = disconnect({ ratedA: 300 });
const meter = shunt({ ratedA: 500 });
const galley = inverter({ continuousW: 2000 });
const charger = dcDcCharger({ outputA: 30, runs: "always" });
const engine = alternator({ ratedA: 90 });
const mains = shoreCharger({ outputA: 20 });
const roof = solarArray({ openCircuitV: 22.5, shortCircuitA: 9.8, maxPowerV: 18.6, maxPowerA: 9.2 });
const controller = solarController({ maxInputV: 100, outputA: 30 });
const body = chassis({ milliohm: 0.5 });
const heat = load({ resistanceOhm: 0.6 });
const windlass = motor({ runningA: 60, startingA: 180 });
const socket = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"], milliohm: 2 }] });
const wire = { lengthM: 1, gauge: 4 } as const;

cable({ from: house.positive, to: second.positive, ...wire });
cable({ from: house.positive, to: second.negative, ...wire });
cable({ from: house.negative, to: second.positive, lengthFt: 1, mm2: 25 });
cable({ from: house.positive, to: cutOff.line, ...wire, protect: { ratingA: 300, ratedV: 58 } });
cable({ from: cutOff.load, to: plus.stud, ...wire });
cable({ from: plus.stud, to: bus.stud, ...wire });
cable({ from: minus.stud, to: meter.systemSide, ...wire });
cable({ from: meter.batterySide, to: house.negative, ...wire });
cable({ from: minus.stud, to: body.bond, ...wire });
cable({ from: bus.stud, to: socket.in, ...wire });
cable({ from: socket.out, to: panel.feed, ...wire });
cable({ from: engine.positive, to: charger.inputPositive, ...wire });
cable({ from: charger.outputPositive, to: plus.stud, ...wire });
cable({ from: mains.positive, to: plus.stud, ...wire });
cable({ from: roof.positive, to: controller.solarPositive, ...wire });
cable({ from: heat.negative, to: body.metal, ...wire });
// @ts-expect-error: positive to negative
cable({ from: panel.branch, to: house.negative, ...wire });
// @ts-expect-error: negative to positive
cable({ from: body.metal, to: plus.stud, ...wire });
// @ts-expect-error: the plus of a battery to a minus that is no battery's
cable({ from: house.positive, to: minus.stud, ...wire });
// @ts-expect-error: a charger's plus to a battery's minus
cable({ from: mains.positive, to: house.negative, ...wire });
// @ts-expect-error: a whole part is no terminal
cable({ from: house, to: bus.stud, ...wire });
// @ts-expect-error: a cable has no terminals
cable({ from: cable({ from: house.positive, to: bus.stud, ...wire }).positive, to: bus.stud, ...wire });
// @ts-expect-error: a battery has no stud
cable({ from: house.stud, to: bus.stud, ...wire });
// @ts-expect-error: not one of its terminals
cable({ from: socket.inn, to: bus.stud, ...wire });
// @ts-expect-error: no size
cable({ from: house.positive, to: bus.stud, lengthM: 1 });
// A cable may leave its length out, and so may a circuit with from.
cable({ from: house.positive, to: bus.stud, gauge: 4 });
circuit({ from: bus.stud, returnTo: house.negative, load: 4, gauge: 4 });
circuit({ from: bus.stud, returnTo: house.negative, loadW: 40, mm2: 4 });
// @ts-expect-error: one length of two
circuit({ from: bus.stud, returnTo: house.negative, load: 4, gauge: 4, positiveFt: 3 });
// @ts-expect-error: both lengths
cable({ from: house.positive, to: bus.stud, ...wire, lengthFt: 3 });
// @ts-expect-error: leads nowhere
cable({ from: house.positive, ...wire });
// @ts-expect-error: a cable feeds no load of its own
cable({ from: house.positive, to: bus.stud, ...wire, load: 4 });

circuit({ ...rest, gauge: 4, from: panel.branch });
circuit({ ...rest, gauge: 4, from: bus.stud, returnTo: body.metal });
circuit({ oneWayFt: 15, gauge: 4, from: house.positive, to: galley });
circuit({ oneWayFt: 15, gauge: 4, from: plus.stud, returnTo: minus.stud, to: controller });
circuit({ oneWayFt: 15, gauge: 4, from: plus.stud, returnTo: minus.stud, to: panel });
const twoPoles = part({ terminals: ["positive", "negative", "signal"] });
circuit({ oneWayFt: 15, gauge: 4, from: plus.stud, returnTo: minus.stud, to: twoPoles });
// @ts-expect-error: starts at a minus
circuit({ ...rest, gauge: 4, from: house.negative });
// @ts-expect-error: returns to a plus
circuit({ ...rest, gauge: 4, from: panel.branch, returnTo: house.positive });
// @ts-expect-error: both a load and a part
circuit({ ...rest, gauge: 4, from: panel.branch, to: galley });
// @ts-expect-error: a terminal is no part
circuit({ oneWayFt: 15, gauge: 4, from: panel.branch, to: galley.positive });
// @ts-expect-error: a bus bar has no two poles
circuit({ oneWayFt: 15, gauge: 4, from: panel.branch, to: bus });
// @ts-expect-error: nor has this
circuit({ oneWayFt: 15, gauge: 4, from: panel.branch, to: socket });

// @ts-expect-error: no capacity
battery({ chemistry: "AGM" });
// @ts-expect-error: no chemistry
battery({ capacityAh: 100 });
// @ts-expect-error: misspelt
battery({ chemistry: "LiFePo4", capacityAh: 100 });
// @ts-expect-error: neither side
busBar({ side: "plus" });
// @ts-expect-error: two ways to say what it draws
load({ currentA: 4, powerW: 48 });
// @ts-expect-error: no way
load({ critical: true });
// @ts-expect-error: does it draw nothing while it starts?
motor({ runningA: 4 });
// @ts-expect-error: not one of its terminals
part({ terminals: ["in", "out"], joins: [{ between: ["in", "outt"] }] });
// @ts-expect-error: never
dcDcCharger({ outputA: 30, runs: "never" });
// @ts-expect-error: read only
house.capacityAh = 5;
// @ts-expect-error: read only
house.positive.part = 5;

scenario({ name: "At anchor", off: [galley, heat], chargePercent: 50 });
scenario({ name: "Weighing anchor", on: [windlass], starting: [windlass], engine: true, bankV: 12.6 });
// @ts-expect-error: no name
scenario({ off: [heat] });
// @ts-expect-error: both lists
scenario({ name: "At anchor", on: [heat], off: [galley] });
// @ts-expect-error: both ways to say how full the bank is
scenario({ name: "At anchor", chargePercent: 50, bankV: 12.6 });
// @ts-expect-error: a bus bar is never off
scenario({ name: "At anchor", off: [bus] });
// @ts-expect-error: only motors start
scenario({ name: "At anchor", starting: [heat] });
// @ts-expect-error: a terminal is never off
scenario({ name: "At anchor", off: [heat.positive] });

// Workshop data.
build({
  slackPercent: 5,
  endSlackMm: 50,
  spareFuses: 1,
  positiveColour: "violet",
  negativeColour: "yellow",
  currency: "EUR",
});
build({
  spools: [
    { gauge: 4, lengthFt: 100 },
    { mm2: 2.5, lengthM: 50, colour: "red", price: 30 },
  ],
});
const spools: SpoolInput[] = [1.5, 2.5].map((mm2) => ({ mm2: mm2 as Mm2Size, lengthM: 50 }));
build({ endSlackIn: 4, spools });
circuit({ ...rest, gauge: 4, colour: "blue", returnColour: "yellow", label: "A 1", termination: "M4" });
fusePanel({
  positions: 6,
  termination: "M6",
  torqueNm: 5,
  branchTermination: "#8",
  branchTorqueNm: 1.4,
  price: 60,
});
// @ts-expect-error: both units
build({ endSlackMm: 50, endSlackIn: 2 });
// @ts-expect-error: no size
build({ spools: [{ lengthFt: 100 }] });
// @ts-expect-error: both lengths
build({ spools: [{ gauge: 4, lengthFt: 100, lengthM: 30 }] });
// @ts-expect-error: no such spool is wound
build({ spools: [{ gauge: 3, lengthFt: 100 }] });
// @ts-expect-error: one spool is a list of one
build({ spools: { gauge: 4, lengthFt: 100 } });
// @ts-expect-error: a colour is text
circuit({ ...rest, gauge: 4, colour: 5 });
// @ts-expect-error: a cable has one conductor
cable({ from: house.positive, to: bus.stud, ...wire, returnColour: "blue" });
// @ts-expect-error: no such stud
battery({ chemistry: "AGM", capacityAh: 100, termination: "M7" });
// @ts-expect-error: only a panel has branches
busBar({ branchTermination: "#8" });

// People's own functions over a network.
const lead = (from: Terminal, to: Terminal, size: SizeInput) => cable({ from, to, lengthM: 1, ...size });
lead(house.positive, bus.stud, { gauge: 4 });
const feed = (to: FedPart) => circuit({ from: panel.branch, to, oneWayFt: 15, gauge: 4 });
feed(windlass);
for (const end of [bus.stud, plus.stud, house.positive]) cable({ from: end, to: panel.feed, ...wire });
const leads: readonly CableInput[] = [{ from: house.positive, to: bus.stud, ...wire }];
for (const one of leads) cable(one);
