import { battery, build, cable, circuit, disconnect } from "loomwright";

// A mobile library: the heater runs all day at the rating of its fuse.
// Expected: warning protection/headroom at heater
// Because: NFPA 70, 210.20(A): 125 % of a continuous 20 A are 25 A; the fuse is 20 A.
build({ name: "no headroom", voltage: 12, insulationC: 105 });

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
  name: "heater",
  load: 20,
  oneWayFt: 6,
  gauge: 8,
  protect: { ...classT, ratingA: 20, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
