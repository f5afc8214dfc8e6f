import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  inverter,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A mountain refuge: 48 V from the roof for the inverter, 12 V for lamps and radio; metric; the bank in a warm cellar.
build({ name: "mountain refuge", voltage: 48, insulationC: 90, installedIn: "building", lowestC: -25 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 120 }) as const;
const pack = battery({
  name: "cellar pack",
  chemistry: "LiFePO4",
  nominalV: 51.2,
  capacityAh: 200,
  internalMilliohm: 9,
  maxDischargeA: 200,
  maxChargeA: 100,
  lowestC: 4,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "48 V plus", side: "positive", ratedA: 200, studs: 6 });
const minus = busBar({ name: "48 V minus", side: "negative", ratedA: 200, studs: 6 });
const meter = shunt({ name: "meter", ratedA: 300 });
cable({ name: "pack plus", from: pack.positive, to: off.line, lengthM: 0.5, mm2: 50, protect: classT(175) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthM: 0.4, mm2: 50 });
cable({ name: "pack minus", from: pack.negative, to: meter.batterySide, lengthM: 0.6, mm2: 50 });
cable({ name: "metered minus", from: meter.systemSide, to: minus.stud, lengthM: 0.4, mm2: 50 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
const kitchen = inverter({
  name: "inverter",
  continuousW: 2400,
  surgeW: 4000,
  efficiencyPercent: 93,
  cutOffV: 44,
});
circuit({ ...rails, name: "inverter pair", to: kitchen, oneWayM: 1.5, mm2: 25, protect: classT(80) });
const converter = dcDcCharger({
  name: "converter",
  outputA: 25,
  outputV: 13.2,
  inputMinV: 40,
  isolated: true,
  runs: "always",
});
circuit({ ...rails, name: "converter feed", to: converter, oneWayM: 1, mm2: 6, protect: classT(15) });
const panel = fusePanel({ name: "12 V panel", positions: 6, ratedA: 50, branchRatedA: 15 });
cable({ name: "12 V plus", from: converter.outputPositive, to: panel.feed, lengthM: 0.8, mm2: 10 });
cable({ name: "12 V minus", from: converter.outputNegative, to: panel.negative, lengthM: 0.8, mm2: 10 });
circuit({
  name: "dormitory lamps",
  voltage: 12,
  from: panel.branch,
  load: 4,
  oneWayM: 8,
  mm2: 2.5,
  protect: 5,
});
circuit({
  name: "rescue radio",
  voltage: 12,
  from: panel.branch,
  load: 5,
  critical: true,
  oneWayM: 3,
  mm2: 4,
  protect: 7.5,
});
const roof = solarArray({
  name: "roof",
  openCircuitV: 37.5,
  shortCircuitA: 11.2,
  maxPowerV: 31.2,
  maxPowerA: 10.6,
  series: 3,
  parallel: 2,
});
const tracker = solarController({ name: "tracker", maxInputV: 150, outputA: 45, outputV: 56.8 });
const roofOff = disconnect({ name: "roof isolator", ratedA: 32 });
cable({ name: "roof plus", from: roof.positive, to: roofOff.line, lengthM: 8, mm2: 10 });
cable({ name: "roof plus inside", from: roofOff.load, to: tracker.solarPositive, lengthM: 2, mm2: 10 });
cable({ name: "roof minus", from: roof.negative, to: tracker.solarNegative, lengthM: 10, mm2: 10 });
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthM: 1,
  mm2: 16,
  protectFarEnd: classT(60),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthM: 1, mm2: 16 });
