import { battery, build, cable, chassis, circuit, disconnect } from "loomwright";

// A gritter: its lamps and pump return through the frame, which a 12 AWG wire bonds to the battery.
// Expected: error conductor/ampacity at frame bond
// Because: 33 CFR 183.425(b): 12 AWG may carry 45 A; the loads that return through it draw 58 A together.
// May follow: error protection/return-conductor at frame bond
// May follow: warning conductor/fault-withstand at frame bond
build({ name: "thin frame bond", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const frame = chassis({ name: "frame", milliohm: 0.4 });
cable({ name: "frame bond", from: bank.negative, to: frame.bond, lengthFt: 1, gauge: 12 });
circuit({
  name: "salt pump",
  from: mainSwitch.load,
  returnTo: frame.metal,
  load: 50,
  positiveFt: 8,
  negativeFt: 1,
  gauge: 6,
  protect: { ...classT, ratingA: 70, distanceIn: 5 },
});
circuit({
  name: "rear lamps",
  from: mainSwitch.load,
  returnTo: frame.metal,
  load: 8,
  positiveFt: 12,
  negativeFt: 1,
  gauge: 12,
  protect: { ...classT, ratingA: 10, distanceIn: 5 },
});
