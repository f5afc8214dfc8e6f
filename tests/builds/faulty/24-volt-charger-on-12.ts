import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A boat: a shore charger for 24 V on the 12 V bank.
// Expected: error battery/charging-voltage at shore charger
// Because: Common practice: AGM is charged to 14.4 to 14.7 V; 28.8 V boils it.
build({ name: "24 volt charger on 12", voltage: 12, insulationC: 105, installedIn: "boat" });
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
const shore = shoreCharger({ name: "shore charger", outputA: 20, outputV: 28.8 });
cable({
  name: "shore plus",
  from: shore.positive,
  to: off.load,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: classT(30),
});
cable({ name: "shore minus", from: shore.negative, to: bank.negative, lengthFt: 4, gauge: 10 });
