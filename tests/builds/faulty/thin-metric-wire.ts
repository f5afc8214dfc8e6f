import { battery, build, cable, circuit, disconnect } from "loomwright";

// A tea wagon in metric sizes: 1.5 mm² for the boiler.
// Expected: error conductor/ampacity at boiler
// Because: ISO 10133:2012, Annex A (recalled): 1.5 mm² of 85 to 90 °C may carry 21 A, and the boiler draws 25 A.
// May follow: error protection/above-conductor at boiler
build({ name: "tea wagon", voltage: 12, insulationC: 90 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 0.5,
  mm2: 25,
  protect: { ...classT, ratingA: 80, distanceMm: 150 },
});
circuit({
  name: "boiler",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 25,
  continuous: false,
  oneWayM: 1,
  mm2: 1.5,
  protect: { ...classT, ratingA: 30, distanceMm: 120 },
});
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 3,
  oneWayM: 3,
  mm2: 1.5,
  protect: { ...classT, ratingA: 6, distanceMm: 120 },
});
