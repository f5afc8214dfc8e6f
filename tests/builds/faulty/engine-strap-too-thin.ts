import { alternator, battery, build, cable, chassis, circuit, disconnect } from "loomwright";

// A delivery van: a greater alternator was fitted, and the strap between engine and body is the old thin one.
// Expected: error conductor/ampacity at engine strap
// Because: 33 CFR 183.425(b), Table 5: 10 AWG at 50 °C may carry 51 A; the alternator's current returns through it.
// May follow: error protection/return-conductor at engine strap
build({ name: "delivery van", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 95,
  internalMilliohm: 4,
  maxDischargeA: 600,
  maxChargeA: 150,
});
const body = chassis({ name: "body", milliohm: 0.2 });
const machine = alternator({ name: "alternator", ratedA: 140 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: bank.positive,
  lengthFt: 4,
  gauge: "1/0",
  engineSpace: true,
  protectFarEnd: classT(175),
});
cable({
  name: "engine strap",
  from: machine.negative,
  to: body.metal,
  lengthFt: 1,
  gauge: 10,
  engineSpace: true,
});
cable({ name: "battery minus", from: bank.negative, to: body.bond, lengthFt: 1, gauge: "1/0" });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "house plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
circuit({
  name: "parcel lamps",
  from: off.load,
  returnTo: body.metal,
  load: 8,
  positiveFt: 15,
  negativeFt: 1,
  gauge: 12,
  protect: classT(15),
});
