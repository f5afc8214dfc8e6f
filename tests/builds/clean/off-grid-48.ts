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

// A house of 48 V.
build({ name: "off grid 48", voltage: 48, insulationC: 90, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 51.2,
  capacityAh: 200,
  internalMilliohm: 10,
  maxDischargeA: 200,
  maxChargeA: 100,
  lowestC: 10,
});
const off = disconnect({ name: "isolator", ratedA: 200 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 200, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 200, studs: 6 });
cable({ name: "pack plus", from: pack.positive, to: off.line, lengthM: 0.6, mm2: 70, protect: classT(175) });
cable({ name: "switched", from: off.load, to: plus.stud, lengthM: 0.4, mm2: 70 });
cable({ name: "pack minus", from: pack.negative, to: minus.stud, lengthM: 0.8, mm2: 70 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
const inv = inverter({ name: "inverter", continuousW: 5000, surgeW: 8000, cutOffV: 44 });
circuit({ ...rails, name: "inverter pair", to: inv, oneWayM: 1.5, mm2: 50, protect: classT(175) });
const wall = solarArray({
  name: "array",
  openCircuitV: 38,
  shortCircuitA: 10,
  maxPowerV: 31,
  maxPowerA: 9.5,
  series: 3,
  lowestC: -15,
});
const cut = disconnect({ name: "array isolator", ratedA: 25 });
const sun = solarController({ name: "controller", maxInputV: 150, outputA: 40, outputV: 56.8 });
cable({ name: "array plus", from: wall.positive, to: cut.line, lengthM: 8, mm2: 6 });
cable({ name: "array in", from: cut.load, to: sun.solarPositive, lengthM: 1, mm2: 6 });
cable({ name: "array minus", from: wall.negative, to: sun.solarNegative, lengthM: 9, mm2: 6 });
cable({
  name: "sun plus",
  from: sun.positive,
  to: plus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: classT(50),
});
cable({ name: "sun minus", from: sun.negative, to: minus.stud, lengthM: 1, mm2: 10 });
