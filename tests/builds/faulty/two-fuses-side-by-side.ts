import { battery, build, busBar, cable, circuit, disconnect, fuseHolder, motor } from "loomwright";

// A rescue boat: two 100 A fuses side by side, because no 200 A fuse was at hand.
// Expected: error protection/side-by-side at fuse A or fuse B or fuse to switch
// Because: 33 CFR 183.455(c): 4 AWG may carry 160 A, and two fuses of 100 A pass 200 A; their sum protects nothing.
build({ name: "two fuses side by side", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 200,
  shortCircuitA: 3500,
  maxDischargeA: 500,
});
const fuse = {
  ratingA: 100,
  family: "UL 248-15 Class T",
  interruptingA: 20_000,
  ratedV: 125,
  on: bank.positive,
} as const;
const fuseA = fuseHolder({ ...fuse, name: "fuse A" });
const fuseB = fuseHolder({ ...fuse, name: "fuse B" });
const stud = busBar({ name: "stud", side: "positive", ratedA: 250 });
cable({ name: "from fuse A", from: fuseA.load, to: stud.stud, lengthFt: 0.5, gauge: 2 });
cable({ name: "from fuse B", from: fuseB.load, to: stud.stud, lengthFt: 0.5, gauge: 2 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 250 });
cable({ name: "fuse to switch", from: stud.stud, to: mainSwitch.line, lengthFt: 3, gauge: 4 });
const pump = motor({ name: "salvage pump", runningA: 110, startingA: 140 });
circuit({
  name: "pump cable",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: pump,
  oneWayFt: 6,
  gauge: 2,
});
