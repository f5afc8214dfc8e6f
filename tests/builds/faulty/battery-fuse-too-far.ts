import { battery, build, cable, circuit, disconnect } from "loomwright";

// A trailer: the main fuse sits in the cabinet, 8 ft along the cable.
// Expected: warning protection/distance at battery to switch
// Because: 33 CFR 183.460(a): within 72 in of the battery, measured along the conductor; it is 96 in.
build({ name: "battery fuse too far", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 10,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 96 },
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
