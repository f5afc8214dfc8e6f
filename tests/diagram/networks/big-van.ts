import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  chassis,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  inverter,
  motor,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// Everything at once: two batteries in parallel, sun, shore, engine, an inverter and two panels.
build({ name: "big van", voltage: 12 });
const one = battery({ name: "house battery 1", chemistry: "LiFePO4", capacityAh: 200 });
const two = battery({ name: "house battery 2", chemistry: "LiFePO4", capacityAh: 200 });
const plusJoint = busBar({ name: "battery plus joint", side: "positive" });
const minusJoint = busBar({ name: "battery minus joint", side: "negative" });
cable({
  name: "battery 1 plus",
  from: one.positive,
  to: plusJoint.stud,
  lengthM: 0.5,
  mm2: 50,
  protect: 200,
});
cable({
  name: "battery 2 plus",
  from: two.positive,
  to: plusJoint.stud,
  lengthM: 0.5,
  mm2: 50,
  protect: 200,
});
cable({ name: "battery 1 minus", from: one.negative, to: minusJoint.stud, lengthM: 0.5, mm2: 50 });
cable({ name: "battery 2 minus", from: two.negative, to: minusJoint.stud, lengthM: 0.5, mm2: 50 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 300 });
const meter = shunt({ name: "shunt", ratedA: 500 });
const plus = busBar({ name: "plus bus", side: "positive" });
const minus = busBar({ name: "minus bus", side: "negative" });
cable({ name: "joint to switch", from: plusJoint.stud, to: mainSwitch.line, lengthM: 0.5, mm2: 70 });
cable({ name: "switch to bus", from: mainSwitch.load, to: plus.stud, lengthM: 0.5, mm2: 70 });
cable({ name: "joint to shunt", from: minusJoint.stud, to: meter.batterySide, lengthM: 0.5, mm2: 70 });
cable({ name: "shunt to bus", from: meter.systemSide, to: minus.stud, lengthM: 0.5, mm2: 70 });

const start = battery({ name: "starter battery", chemistry: "AGM", capacityAh: 95 });
const frame = chassis({ name: "frame", milliohm: 1 });
const engine = alternator({ name: "alternator", ratedA: 180 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthM: 1.5,
  mm2: 35,
  protectFarEnd: 200,
});
cable({ name: "engine earth", from: engine.negative, to: frame.metal, lengthM: 0.5, mm2: 35 });
cable({ name: "starter earth", from: start.negative, to: frame.bond, lengthM: 0.5, mm2: 35 });
cable({ name: "bond of the minus bus", from: minus.stud, to: frame.metal, lengthM: 1, mm2: 35 });
const booster = dcDcCharger({ name: "booster", outputA: 40, outputV: 14.4 });
circuit({
  name: "booster feed",
  from: start.positive,
  returnTo: minus.stud,
  to: booster,
  oneWayM: 4,
  mm2: 25,
  protect: 70,
});
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: plus.stud,
  lengthM: 1,
  mm2: 16,
  protectFarEnd: 60,
});
cable({ name: "booster minus", from: booster.outputNegative, to: minus.stud, lengthM: 1, mm2: 16 });

const roof = solarArray({
  name: "roof modules",
  openCircuitV: 24.6,
  shortCircuitA: 9.8,
  maxPowerV: 20.5,
  maxPowerA: 9.1,
  openCircuitPercentPerC: -0.28,
  series: 2,
});
const controller = solarController({ name: "solar controller", maxInputV: 100, outputA: 30, outputV: 14.4 });
circuit({ name: "roof to controller", from: roof.positive, to: controller, oneWayM: 5, mm2: 6 });
cable({ name: "sun plus", from: controller.positive, to: plus.stud, lengthM: 1, mm2: 10, protectFarEnd: 40 });
cable({ name: "sun minus", from: controller.negative, to: minus.stud, lengthM: 1, mm2: 10 });
const shore = shoreCharger({ name: "shore charger", outputA: 30, outputV: 14.4 });
cable({ name: "shore plus", from: shore.positive, to: plus.stud, lengthM: 1, mm2: 10, protectFarEnd: 40 });
cable({ name: "shore minus", from: shore.negative, to: minus.stud, lengthM: 1, mm2: 10 });

const alternating = inverter({ name: "inverter", continuousW: 2000 });
circuit({
  name: "inverter supply",
  from: plus.stud,
  returnTo: minus.stud,
  to: alternating,
  oneWayM: 1,
  mm2: 70,
  protect: 250,
});
const kitchen = fusePanel({ name: "kitchen panel", positions: 12 });
const cabin = fusePanel({ name: "cabin panel", positions: 12 });
circuit({
  name: "kitchen feeder",
  from: plus.stud,
  returnTo: minus.stud,
  to: kitchen,
  oneWayM: 2,
  mm2: 16,
  protect: 70,
});
circuit({
  name: "cabin feeder",
  from: plus.stud,
  returnTo: minus.stud,
  to: cabin,
  oneWayM: 5,
  mm2: 16,
  protect: 60,
});
const pump = motor({ name: "water pump", runningA: 6, startingA: 12, continuous: false });
circuit({ name: "pump supply", from: kitchen.branch, to: pump, oneWayM: 3, mm2: 2.5, protect: 10 });
for (const [name, load, oneWayM] of [
  ["refrigerator", 5, 3],
  ["kitchen lamps", 2, 4],
  ["kitchen socket", 8, 3],
] as const)
  circuit({ name, from: kitchen.branch, load, oneWayM, mm2: 4, protect: 15 });
for (const [name, load, oneWayM] of [
  ["cabin lamps", 2, 4],
  ["fan", 3, 4],
  ["heater", 8, 3],
  ["reading lamps", 1, 5],
  ["cabin socket", 8, 6],
] as const)
  circuit({ name, from: cabin.branch, load, oneWayM, mm2: 4, protect: 15 });
