import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter, shunt } from "loomwright";

// A van: the inverter is fed from a position of the fuse panel.
// Expected: error panel/rating at inverter pair
// Because: The maker's rating: a branch of 30 A carries the 50 A of the inverter.
build({ name: "inverter on panel branch", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const off = disconnect({ name: "main switch", ratedA: 250 });
const plus = busBar({ name: "plus bus", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bus", side: "negative", ratedA: 250, studs: 8 });
const monitor = shunt({ name: "monitor", ratedA: 300 });
cable({
  name: "house plus",
  from: house.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(200),
});
cable({ name: "switched", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "house minus", from: house.negative, to: monitor.batterySide, lengthFt: 1, gauge: "1/0" });
cable({ name: "counted", from: monitor.systemSide, to: minus.stud, lengthFt: 1, gauge: "1/0" });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
const panel = fusePanel({ name: "panel", positions: 8, ratedA: 100, branchRatedA: 30 });
circuit({ ...rails, name: "panel feed", to: panel, oneWayFt: 4, gauge: 4, protect: classT(80) });
const inv = inverter({ name: "inverter", continuousW: 500, cutOffV: 11 });
circuit({ name: "inverter pair", from: panel.branch, to: inv, oneWayFt: 4, gauge: 6, protect: classT(70) });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 8, gauge: 14, protect: classT(6) });
