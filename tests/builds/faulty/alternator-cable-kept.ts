import { alternator, battery, build, cable, circuit, disconnect } from "loomwright";

// A boat: a 180 A alternator on the cable of the old one.
// Expected: error conductor/ampacity at alternator plus or alternator minus
// Because: 33 CFR 183.425(b), Table 5: 6 AWG may carry 120 A.
// May follow: warning battery/charge-current at bank
// May follow: error protection/above-conductor at alternator plus
// May follow: error protection/both-ends at alternator plus
// May follow: error protection/return-conductor at alternator minus
build({ name: "alternator cable kept", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "battery switch", ratedA: 200 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
const rails = { from: off.load, returnTo: bank.negative } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const engine = alternator({ name: "alternator", ratedA: 180 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: bank.positive,
  lengthFt: 5,
  gauge: 6,
  protectFarEnd: classT(225),
});
cable({ name: "alternator minus", from: engine.negative, to: bank.negative, lengthFt: 5, gauge: 6 });
