import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A skiff: the fuse is in the minus cable of the battery.
// Expected: error protection/unprotected-path at plus to switch
// Because: 33 CFR 183.455(a): the ungrounded conductor is protected; a plus that touches metal is fed past a fuse in the return.
build({ name: "fuse in the return", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 60,
  shortCircuitA: 1500,
  maxDischargeA: 200,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 100 });
cable({ name: "plus to switch", from: bank.positive, to: mainSwitch.line, lengthFt: 2, gauge: 6 });
cable({
  name: "minus with the fuse",
  from: bank.negative,
  to: minusBus.stud,
  lengthFt: 2,
  gauge: 6,
  protect: { ...classT, ratingA: 80, distanceIn: 6 },
});
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: minusBus.stud,
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
