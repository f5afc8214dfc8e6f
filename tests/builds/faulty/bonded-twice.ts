import { battery, build, busBar, cable, chassis, circuit, disconnect } from "loomwright";

// A fire engine of a museum: the minus is bonded to the frame at the battery and again at the pump.
// Expected: warning network/two-grounds at frame or second bond or first bond
// Because: Common practice and ABYC E-11 (not read): one bond, or the return current divides between wire and metal.
build({ name: "bonded twice", voltage: 12, insulationC: 105 });

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
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 150 });
cable({ name: "minus cable", from: bank.negative, to: minusBus.stud, lengthFt: 5, gauge: 2 });
cable({ name: "first bond", from: bank.negative, to: frame.bond, lengthFt: 1, gauge: 2 });
cable({ name: "second bond", from: minusBus.stud, to: frame.metal, lengthFt: 1, gauge: 2 });
circuit({
  name: "pump",
  from: mainSwitch.load,
  returnTo: minusBus.stud,
  load: 20,
  oneWayFt: 6,
  gauge: 8,
  protect: { ...classT, ratingA: 30, distanceIn: 5 },
});
