import { battery, build, cable, circuit, disconnect } from "loomwright";

// A choir's bus: two circuits are called lamps, and the fuse map cannot tell them apart.
// Expected: warning plan/repeated-name at lamps
// Because: No clause: labels, lists and findings name circuits; two of one name cannot be distinguished.
build({ name: "two of one name", voltage: 12, insulationC: 105 });

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
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 2,
  oneWayFt: 18,
  gauge: 14,
  protect: { ...classT, ratingA: 3, distanceIn: 5 },
});
