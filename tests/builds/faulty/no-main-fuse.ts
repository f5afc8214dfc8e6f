import { battery, build, cable, circuit, disconnect } from "loomwright";

// A camp kitchen: the cable from the battery has no fuse at all.
// Expected: error protection/unprotected-path at battery to switch
// Because: 33 CFR 183.460(a): a conductor from a battery has a fuse or breaker within 72 in of it.
build({ name: "no main fuse", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({ name: "battery to switch", from: bank.positive, to: mainSwitch.line, lengthFt: 2, gauge: 2 });
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "stove fan",
  load: 6,
  oneWayFt: 9,
  gauge: 12,
  protect: { ...classT, ratingA: 10, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
