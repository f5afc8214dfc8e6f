import { battery, build, cable, circuit, disconnect } from "loomwright";

// A vineyard: a long run whose far short looks like a load to a slow strip fuse.
// Expected: warning protection/does-not-clear at gate opener
// Because: IEC 60364-4-41, 411.3.2.3 by analogy: 5 s; some 150 A at the far end are 250 % of 60 A, where a strip fuse may take 15 s.
build({ name: "short too far away", voltage: 12, insulationC: 105 });

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
  name: "gate opener",
  load: 14,
  continuous: false,
  oneWayFt: 62,
  gauge: 6,
  protect: { ratingA: 60, family: "ISO 8820-5 Type SF 30", interruptingA: 5000, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
