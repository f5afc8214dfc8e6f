import { battery, build, cable, circuit, disconnect } from "loomwright";

// A truck of 24 V whose build states no voltage: it follows from the bank.
build({ name: "tipper truck", insulationC: 105, installedIn: "vehicle" });
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
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
circuit({
  name: "work lamps",
  from: off.load,
  returnTo: bank.negative,
  loadW: 240,
  oneWayFt: 12,
  gauge: 10,
  protect: classT(30),
});
