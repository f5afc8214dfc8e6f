import { battery, build, cable, circuit, disconnect } from "loomwright";

// A boat: a heater in a bundle of nine with cable of 70 °C.
// Expected: error conductor/ampacity at heater
// Because: ISO 10133:2012, Annex A (from memory), with the factor for bundles: 2.5 mm² carries less than 24 A.
// May follow: error protection/above-conductor at heater
build({ name: "bundle metric", voltage: 12, insulationC: 105, installedIn: "boat" });
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
circuit({
  ...rails,
  name: "heater",
  load: 24,
  continuous: false,
  oneWayM: 2,
  mm2: 2.5,
  insulationC: 70,
  bundledWith: 8,
  protect: classT(25),
});
