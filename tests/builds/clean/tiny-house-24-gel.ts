import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  motor,
  solarArray,
  solarController,
} from "loomwright";

// A tiny house: 24 V from two gel batteries in series; metric.
build({ name: "larch tiny house", voltage: 24, insulationC: 90, installedIn: "building", lowestC: -15 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 120 }) as const;
const gel = {
  chemistry: "gel",
  nominalV: 12,
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 300,
  maxChargeA: 40,
} as const;
const lower = battery({ ...gel, name: "lower battery" });
const upper = battery({ ...gel, name: "upper battery" });
cable({ name: "link", from: lower.positive, to: upper.negative, lengthM: 0.3, mm2: 35 });
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 150, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 150, studs: 6 });
cable({ name: "bank plus", from: upper.positive, to: off.line, lengthM: 0.5, mm2: 35, protect: classT(125) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthM: 0.3, mm2: 35 });
cable({ name: "bank minus", from: lower.negative, to: minus.stud, lengthM: 0.6, mm2: 35 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
const kitchen = inverter({ name: "inverter", continuousW: 1200, surgeW: 1800, cutOffV: 21 });
circuit({ ...rails, name: "inverter pair", to: kitchen, oneWayM: 1.2, mm2: 25, protect: classT(90) });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 40, branchRatedA: 20 });
circuit({ ...rails, name: "panel feeder", to: panel, oneWayM: 2, mm2: 10, protect: classT(35) });
circuit({ name: "lamps", from: panel.branch, load: 2, oneWayM: 6, mm2: 1.5, protect: 3 });
const pump = motor({ name: "water pump", runningA: 4, startingA: 10, startingS: 0.2, continuous: false });
circuit({ name: "pump pair", from: panel.branch, to: pump, oneWayM: 5, mm2: 2.5, protect: 7.5 });
circuit({ name: "heater fan", from: panel.branch, load: 3, oneWayM: 4, mm2: 2.5, protect: 5 });
const roof = solarArray({
  name: "roof",
  openCircuitV: 37.2,
  shortCircuitA: 9.6,
  maxPowerV: 31,
  maxPowerA: 9.1,
  series: 2,
});
const tracker = solarController({ name: "tracker", maxInputV: 100, outputA: 25, outputV: 28.2 });
const isolator = disconnect({ name: "roof isolator", ratedA: 32 });
cable({ name: "roof plus", from: roof.positive, to: isolator.line, lengthM: 6, mm2: 6 });
cable({ name: "roof plus inside", from: isolator.load, to: tracker.solarPositive, lengthM: 1, mm2: 6 });
cable({ name: "roof minus", from: roof.negative, to: tracker.solarNegative, lengthM: 7, mm2: 6 });
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: classT(35),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthM: 1, mm2: 10 });
