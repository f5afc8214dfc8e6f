import { battery, build, busBar, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A narrow boat: the shore charger is set to 12.9 V, for a bank of AGM.
// Expected: warning battery/charging-voltage at charger or bank
// Because: Common practice (no source): lead-acid is charged with 2.35 to 2.45 V a cell and floated at 2.25; at 2.15 V it never fills, and sulphates.
build({ name: "narrow boat at the quay", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 3,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 200, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 200, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(125) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const charger = shoreCharger({ name: "charger", outputA: 30, outputV: 12.9 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: classT(40),
});
cable({ name: "charger minus", from: charger.negative, to: minus.stud, lengthFt: 4, gauge: 8 });
