import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A lorry of 24 V: the inverter of the old van, for 12 V, was carried over.
// Expected: error inverter/other-voltage at inverter
// Because: Its cut-off of 10.5 V is that of an inverter for 12 V; 24 V destroy it, and it would empty a bank of 24 V to 0 %.
build({ name: "removal lorry", voltage: 24, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 150,
  internalMilliohm: 8,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "switch", ratedA: 200 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "2/0",
  protect: classT(175),
});
const carried = inverter({ name: "inverter", continuousW: 1000, cutOffV: 10.5 });
circuit({
  name: "inverter pair",
  from: off.load,
  returnTo: bank.negative,
  to: carried,
  oneWayFt: 4,
  gauge: "2/0",
  protect: classT(150),
});
