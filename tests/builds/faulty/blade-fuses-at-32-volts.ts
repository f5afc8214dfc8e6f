import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// An old motor yacht of 32 V: the new lamps got blade fuses marked 32 V.
// Expected: error protection/voltage-rating at mast lamps
// Because: 33 CFR 183.455(d): a device's voltage is at least that of its circuit; while charging, 38.4 V are applied.
build({ name: "old motor yacht", voltage: 32, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  nominalV: 32,
  capacityAh: 200,
  internalMilliohm: 10,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
circuit({
  name: "mast lamps",
  from: off.load,
  returnTo: bank.negative,
  load: 2,
  oneWayFt: 30,
  gauge: 14,
  protect: { ratingA: 3, family: "ISO 8820-3 Type C", ratedV: 32, distanceIn: 5 },
});
circuit({
  name: "pumps",
  from: off.load,
  returnTo: bank.negative,
  load: 8,
  oneWayFt: 12,
  gauge: 12,
  protect: classT(15),
});
const charger = shoreCharger({ name: "charger", outputA: 20, outputV: 38.4 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: off.load,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: classT(30),
});
cable({ name: "charger minus", from: charger.negative, to: bank.negative, lengthFt: 4, gauge: 10 });
