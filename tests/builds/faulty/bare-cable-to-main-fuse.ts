import { battery, build, cable, circuit, disconnect } from "loomwright";

// A crofter's van: 40 in of bare cable between the battery and its fuse.
// Expected: info protection/distance at battery to switch
// Because: 33 CFR 183.460(a) allows 72 in; private small-craft practice (not read) 7 in on bare cable.
build({ name: "bare cable to main fuse", voltage: 12, insulationC: 105 });

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
  lengthFt: 5,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 40 },
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
