import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  inverter,
  solarArray,
  solarController,
} from "loomwright";

// A cabin of 24 V.
build({ name: "cabin 24", voltage: 24, insulationC: 90, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  nominalV: 25.6,
  capacityAh: 200,
  internalMilliohm: 6,
  maxDischargeA: 200,
  maxChargeA: 100,
  lowestC: 5,
});
const off = disconnect({ name: "isolator", ratedA: 200 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 200, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 200, studs: 6 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthM: 0.5, mm2: 50, protect: classT(150) });
cable({ name: "switched", from: off.load, to: plus.stud, lengthM: 0.4, mm2: 50 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthM: 0.8, mm2: 50 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
const inv = inverter({ name: "inverter", continuousW: 2000, surgeW: 4000, cutOffV: 22 });
circuit({ ...rails, name: "inverter pair", to: inv, oneWayM: 1.5, mm2: 35, protect: classT(125) });
circuit({ ...rails, name: "lamps", load: 2, oneWayM: 10, mm2: 2.5, protect: classT(3) });
const roof = solarArray({
  name: "roof",
  openCircuitV: 38,
  shortCircuitA: 10,
  maxPowerV: 31,
  maxPowerA: 9.5,
  lowestC: -20,
  parallel: 2,
});
const sun = solarController({ name: "controller", maxInputV: 100, outputA: 30, outputV: 28.4 });
circuit({ name: "roof pair", from: roof.positive, returnTo: roof.negative, to: sun, oneWayM: 6, mm2: 10 });
cable({
  name: "sun plus",
  from: sun.positive,
  to: plus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: classT(40),
});
cable({ name: "sun minus", from: sun.negative, to: minus.stud, lengthM: 1, mm2: 10 });
