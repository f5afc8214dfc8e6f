import { battery, breaker, build, cable, circuit, disconnect, motor, shoreCharger } from "loomwright";

// A skiff: two lithium batteries of 12 V in series for a trolling motor of 24 V.
build({ name: "trolling skiff", voltage: 24, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const of12 = {
  chemistry: "LiFePO4",
  nominalV: 12.8,
  capacityAh: 100,
  internalMilliohm: 5,
  shortCircuitA: 2000,
  maxDischargeA: 100,
  maxChargeA: 50,
} as const;
const lower = battery({ ...of12, name: "lower battery" });
const upper = battery({ ...of12, name: "upper battery" });
cable({ name: "link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 6 });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({
  name: "bank plus",
  from: upper.positive,
  to: off.line,
  lengthFt: 1.5,
  gauge: 6,
  protect: classT(80),
});
const guard = breaker({ name: "motor breaker", ratingA: 60, interruptingA: 5000, ratedV: 48 });
const trolling = motor({ name: "trolling motor", runningA: 45, startingA: 70, startingS: 0.3 });
cable({ name: "to breaker", from: off.load, to: guard.line, lengthFt: 0.5, gauge: 6 });
cable({ name: "motor plus", from: guard.load, to: trolling.positive, lengthFt: 10, gauge: 6 });
cable({ name: "motor minus", from: trolling.negative, to: lower.negative, lengthFt: 11, gauge: 6 });
circuit({
  name: "sounder",
  from: off.load,
  returnTo: lower.negative,
  load: 1,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(3),
});
const charger = shoreCharger({ name: "charger", outputA: 15, outputV: 28.8 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: off.load,
  lengthFt: 3,
  gauge: 10,
  protectFarEnd: classT(20),
});
cable({ name: "charger minus", from: charger.negative, to: lower.negative, lengthFt: 3, gauge: 10 });
