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
  solarArray,
  solarController,
} from "loomwright";

// A food truck: starter battery, booster and sun for a lithium bank; the frame is the minus of the truck's own side only.
build({ name: "food truck", voltage: 12, insulationC: 105, installedIn: "vehicle", lowestC: -10 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const frame = chassis({ name: "frame", milliohm: 0.4 });
const starter = battery({
  name: "starter battery",
  chemistry: "flooded lead-acid",
  capacityAh: 95,
  shortCircuitA: 2200,
  maxDischargeA: 700,
  maxChargeA: 80,
});
cable({ name: "starter minus", from: starter.negative, to: frame.bond, lengthFt: 1, gauge: "1/0" });
const machine = alternator({ name: "alternator", ratedA: 130 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: starter.positive,
  lengthFt: 4,
  gauge: "1/0",
  engineSpace: true,
  protectFarEnd: classT(175),
});
cable({
  name: "alternator minus",
  from: machine.negative,
  to: frame.bond,
  lengthFt: 2,
  gauge: "1/0",
  engineSpace: true,
});
const booster = dcDcCharger({ name: "booster", outputA: 40, outputV: 14.4, inputMinV: 10.5, isolated: true });
cable({
  name: "booster lead",
  from: starter.positive,
  to: booster.inputPositive,
  lengthFt: 14,
  gauge: 4,
  protect: classT(90),
});
cable({ name: "booster return", from: booster.inputNegative, to: frame.metal, lengthFt: 2, gauge: 4 });
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 280,
  internalMilliohm: 2.5,
  maxDischargeA: 200,
  maxChargeA: 140,
  lowestC: -5,
  chargeCutOffC: 0,
});
const off = disconnect({ name: "bank switch", ratedA: 200 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 200, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 200, studs: 6 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(175) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: classT(60),
});
cable({ name: "booster minus", from: booster.outputNegative, to: minus.stud, lengthFt: 3, gauge: 6 });
const panel = fusePanel({
  name: "panel",
  positions: 8,
  ratedA: 80,
  branchRatedA: 20,
  testedBehind: { family: "UL 248-15 Class T", ratingA: 200, interruptingA: 10_000 },
});
circuit({
  name: "panel feeder",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 4,
  gauge: 4,
  protect: classT(70),
});
const blade = (ratingA: number) => ({ ratingA, family: "ISO 8820-3 Type C" }) as const;
circuit({ name: "fridge", from: panel.branch, load: 6, oneWayFt: 10, gauge: 10, protect: blade(10) });
circuit({ name: "counter lamps", from: panel.branch, load: 4, oneWayFt: 14, gauge: 12, protect: blade(5) });
circuit({ name: "roof fan", from: panel.branch, load: 5, oneWayFt: 12, gauge: 12, protect: blade(7.5) });
circuit({
  name: "water pump",
  from: panel.branch,
  load: 7,
  continuous: false,
  oneWayFt: 9,
  gauge: 12,
  protect: blade(10),
});
const roof = solarArray({
  name: "roof",
  openCircuitV: 24.2,
  shortCircuitA: 10.3,
  maxPowerV: 20.2,
  maxPowerA: 9.9,
  parallel: 2,
});
const tracker = solarController({ name: "tracker", maxInputV: 75, outputA: 30, outputV: 14.4 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayFt: 12,
  gauge: 8,
});
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: classT(40),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthFt: 3, gauge: 8 });
