import { battery, build, busBar, cable, circuit, disconnect, fusePanel, shunt } from "loomwright";

// A van: 30 ft of 10 AWG to the rear panel.
// Expected: warning conductor/voltage-drop at rear feed or rear heater
// Because: ISO 10133:2012, 4.8: 3 % for the critical heater; the feed alone loses more.
build({ name: "long feed to sub panel", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
const panel = fusePanel({ name: "rear panel", positions: 8, ratedA: 60, branchRatedA: 30 });
circuit({ ...rails, name: "rear feed", to: panel, oneWayFt: 30, gauge: 10, protect: classT(45) });
circuit({
  name: "rear heater",
  from: panel.branch,
  load: 15,
  oneWayFt: 4,
  gauge: 12,
  critical: true,
  protect: classT(20),
});
circuit({ name: "rear fridge", from: panel.branch, load: 6, oneWayFt: 4, gauge: 12, protect: classT(10) });
