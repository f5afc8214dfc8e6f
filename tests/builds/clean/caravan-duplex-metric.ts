import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A caravan: an AGM battery, the mains charger, a module; two-conductor cable to the lamps; metric.
build({ name: "touring caravan", voltage: 12, insulationC: 70, installedIn: "vehicle", lowestC: -10 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 120 }) as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 95,
  internalMilliohm: 5,
  maxDischargeA: 200,
  maxChargeA: 30,
});
const off = disconnect({ name: "switch", ratedA: 100 });
const meter = shunt({ name: "meter", ratedA: 200 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 100, studs: 4 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 100, studs: 5 });
cable({
  name: "battery plus",
  from: bank.positive,
  to: off.line,
  lengthM: 0.4,
  mm2: 16,
  protect: classT(50),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthM: 0.3, mm2: 16 });
cable({ name: "battery minus", from: bank.negative, to: meter.batterySide, lengthM: 0.4, mm2: 16 });
cable({ name: "metered minus", from: meter.systemSide, to: minus.stud, lengthM: 0.3, mm2: 16 });
const panel = fusePanel({
  name: "panel",
  positions: 6,
  ratedA: 40,
  branchRatedA: 20,
  branchFamily: "ISO 8820-3 Type C",
});
circuit({
  name: "panel feeder",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayM: 1,
  mm2: 10,
  protect: classT(35),
});
circuit({
  name: "lamps",
  from: panel.branch,
  load: 3,
  oneWayM: 6,
  mm2: 2.5,
  sheathed: "flat duplex",
  protect: 5,
});
circuit({
  name: "pump",
  from: panel.branch,
  load: 5,
  continuous: false,
  oneWayM: 5,
  mm2: 2.5,
  sheathed: "flat duplex",
  protect: 7.5,
});
circuit({
  name: "fridge fan",
  from: panel.branch,
  load: 2,
  oneWayM: 3,
  mm2: 1.5,
  sheathed: "flat duplex",
  protect: 3,
});
const charger = shoreCharger({ name: "charger", outputA: 20, outputV: 14.4 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: plus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: classT(25),
});
cable({ name: "charger minus", from: charger.negative, to: minus.stud, lengthM: 1, mm2: 10 });
const roof = solarArray({
  name: "module",
  openCircuitV: 22.4,
  shortCircuitA: 6.3,
  maxPowerV: 18.4,
  maxPowerA: 5.9,
});
const tracker = solarController({ name: "tracker", maxInputV: 75, outputA: 10, outputV: 14.4 });
circuit({
  name: "module pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayM: 5,
  mm2: 4,
});
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthM: 1,
  mm2: 4,
  protectFarEnd: classT(15),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthM: 1, mm2: 4 });
