import { battery, build, busBar, cable, circuit, fusePanel, selectorSwitch, starterMotor } from "loomwright";

// A patrol boat with an outboard: two flooded batteries on a selector switch, electronics on a panel.
build({ name: "patrol boat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const minus = busBar({ name: "minus", side: "negative", ratedA: 300, studs: 7 });
const selector = selectorSwitch({ name: "selector", ratedA: 250, momentaryA: 500 });
const alike = {
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  shortCircuitA: 2000,
  maxDischargeA: 600,
  maxChargeA: 50,
} as const;
const port = battery({ ...alike, name: "port battery" });
const starboard = battery({ ...alike, name: "starboard battery" });
cable({ name: "port plus", from: port.positive, to: selector.input1, lengthFt: 3, gauge: "1/0" });
cable({ name: "starboard plus", from: starboard.positive, to: selector.input2, lengthFt: 3, gauge: "1/0" });
cable({ name: "port minus", from: port.negative, to: minus.stud, lengthFt: 3, gauge: "1/0" });
cable({ name: "starboard minus", from: starboard.negative, to: minus.stud, lengthFt: 3, gauge: "1/0" });
const outboard = starterMotor({ name: "outboard starter", crankingA: 200 });
cable({ name: "outboard plus", from: selector.common, to: outboard.positive, lengthFt: 8, gauge: "1/0" });
cable({ name: "outboard minus", from: outboard.negative, to: minus.stud, lengthFt: 8, gauge: "1/0" });
const panel = fusePanel({ name: "console panel", positions: 8, ratedA: 60, branchRatedA: 20 });
circuit({
  name: "console feeder",
  from: selector.common,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 9,
  gauge: 4,
  protect: classT(50),
});
circuit({ name: "radar", from: panel.branch, load: 4, critical: true, oneWayFt: 6, gauge: 12, protect: 7.5 });
circuit({ name: "radio", from: panel.branch, load: 6, critical: true, oneWayFt: 4, gauge: 12, protect: 10 });
circuit({ name: "blue lamp", from: panel.branch, load: 3, oneWayFt: 10, gauge: 14, protect: 5 });
circuit({
  name: "bilge pump",
  from: port.positive,
  returnTo: minus.stud,
  load: 3,
  critical: true,
  oneWayFt: 6,
  gauge: 14,
  protect: classT(6),
});
