import { battery, build, cable, circuit, disconnect } from "loomwright";

// A sailing barge: the masthead lamp at the end of a long thin pair.
// Expected: warning conductor/voltage-drop at masthead lamp
// Because: ISO 10133:2012, 4.8: navigation lamps 3 %; 2 A through 150 ft of 16 AWG lose more than 1 V, over 8 %.
build({ name: "long run to lamp", voltage: 12, insulationC: 105 });

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
  name: "masthead lamp",
  load: 2,
  critical: true,
  oneWayFt: 75,
  gauge: 16,
  protect: { ...classT, ratingA: 3, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
