import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A caravan: the fuse of the old charger stayed when one of 60 A came.
// Expected: error protection/below-load at charger plus
// Because: IEC 60364-4-43, 433.1: a rating is at least the current; 50 A is less than the 60 A of the charger.
build({ name: "caravan", voltage: 12, insulationC: 90, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 120 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 3,
  maxDischargeA: 150,
  maxChargeA: 100,
});
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthM: 0.5, mm2: 35, protect: classT(125) });
const charger = shoreCharger({ name: "charger", outputA: 60, outputV: 14.4 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: off.load,
  lengthM: 1.5,
  mm2: 25,
  protectFarEnd: classT(50),
});
cable({ name: "charger minus", from: charger.negative, to: bank.negative, lengthM: 1.5, mm2: 25 });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: bank.negative,
  load: 4,
  oneWayM: 5,
  mm2: 2.5,
  protect: classT(6),
});
