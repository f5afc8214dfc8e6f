import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A workboat: two leads of 2 AWG side by side, each with a fuse, in front of one switch.
// Expected: error protection/side-by-side at drive cable
// Because: IEC 60364-4-43, 433.4: devices in parallel count together; 250 A protect nothing of 210 A.
build({ name: "two leads in parallel", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 200,
  shortCircuitA: 3000,
  maxDischargeA: 400,
});
const off = disconnect({ name: "switch", ratedA: 250 });
cable({ name: "first lead", from: bank.positive, to: off.line, lengthFt: 1, gauge: 2, protect: classT(125) });
cable({
  name: "second lead",
  from: bank.positive,
  to: off.line,
  lengthFt: 1,
  gauge: 2,
  protect: classT(125),
});
const drive = motor({ name: "drive", runningA: 150, startingA: 180 });
circuit({ name: "drive cable", from: off.load, returnTo: bank.negative, to: drive, oneWayFt: 6, gauge: 2 });
