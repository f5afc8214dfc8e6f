import { alternator, battery, build, cable, circuit, disconnect } from "loomwright";

// A boat: the deck wash pump is connected to the alternator's stud.
// Expected: error protection/unprotected-path at deck wash
// Because: 33 CFR 183.455(a): the battery feeds this branch through the alternator cable, whose fuse is for 4 AWG.
// May follow: warning battery/charge-current at bank
build({ name: "load on alternator output", voltage: 12, insulationC: 105, installedIn: "boat" });
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
const engine = alternator({ name: "alternator", ratedA: 60 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: bank.positive,
  lengthFt: 5,
  gauge: 4,
  protectFarEnd: classT(80),
});
cable({ name: "alternator minus", from: engine.negative, to: bank.negative, lengthFt: 5, gauge: 4 });
circuit({
  name: "deck wash",
  from: engine.positive,
  returnTo: bank.negative,
  load: 8,
  oneWayFt: 10,
  gauge: 14,
});
