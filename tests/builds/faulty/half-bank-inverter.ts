import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A market barrow of 48 V: an old inverter of 24 V is fed from the middle of the four batteries.
// Expected: warning battery/half-bank at inverter supply or inverter
// Because: Common practice: two of four batteries in series are emptied further, and the chargers overcharge the others.
// May follow: warning disconnect/missing at inverter supply
build({ name: "market barrow", voltage: 48, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const cells = (name: string) =>
  battery({
    name,
    chemistry: "AGM",
    nominalV: 12,
    capacityAh: 100,
    internalMilliohm: 5,
    maxDischargeA: 300,
    maxChargeA: 25,
  });
const first = cells("first");
const second = cells("second");
const third = cells("third");
const fourth = cells("fourth");
cable({ name: "first link", from: first.positive, to: second.negative, lengthFt: 1, gauge: 2 });
cable({ name: "second link", from: second.positive, to: third.negative, lengthFt: 1, gauge: 2 });
cable({ name: "third link", from: third.positive, to: fourth.negative, lengthFt: 1, gauge: 2 });
const off = disconnect({ name: "switch", ratedA: 150 });
cable({
  name: "bank plus",
  from: fourth.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 2,
  protect: classT(125),
});
circuit({
  name: "griddle",
  from: off.load,
  returnTo: first.negative,
  load: 40,
  oneWayFt: 5,
  gauge: 6,
  protect: classT(60),
});
const old = inverter({ name: "inverter", continuousW: 600, cutOffV: 21 });
circuit({
  name: "inverter supply",
  from: second.positive,
  returnTo: first.negative,
  to: old,
  voltage: 24,
  oneWayFt: 4,
  gauge: 6,
  protect: classT(50),
});
