import { battery, breaker, build, cable, circuit, disconnect } from "loomwright";

// A cart: the only main device is in the minus.
// Expected: error protection/unprotected-path at plus
// Because: 33 CFR 183.455(a): each ungrounded conductor has a device.
build({ name: "breaker in negative only", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
});
const cut = breaker({ name: "breaker", ratingA: 80, interruptingA: 5000, ratedV: 48, on: bank.negative });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4 });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: cut.load,
  load: 4,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(6),
});
