import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A dock box: the charger's cable is fused at the charger and not at the bank.
// Expected: error protection/both-ends at charger plus
// Because: 33 CFR 183.460(a) and ISO 13297:2020, 12.3: the bank feeds this cable; the charger limits itself, so the fuse moves to the bank's end.
// May follow: error protection/unprotected-path at charger plus
build({ name: "charger fused at its own end", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: { ...classT, ratingA: 200, distanceIn: 6 },
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
const mains = shoreCharger({ name: "charger", outputA: 30, outputV: 14.4 });
cable({
  name: "charger plus",
  from: mains.positive,
  to: mainSwitch.load,
  lengthFt: 5,
  gauge: 8,
  protect: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({ name: "charger minus", from: mains.negative, to: bank.negative, lengthFt: 5, gauge: 8 });
