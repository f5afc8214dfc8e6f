import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A van with one large module: a blade fuse for 32 V in the wire from the roof, which has 45 V in the cold.
// Expected: error protection/voltage-rating at roof plus
// Because: IEC 60364-7-712 and IEC 60269-6 (from memory): a device in an array is rated for its open-circuit voltage in the cold.
build({ name: "van with one module", voltage: 12, insulationC: 105, installedIn: "vehicle", lowestC: -15 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const off = disconnect({ name: "main switch", ratedA: 250 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 250, studs: 8 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(200),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: "1/0" });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const tracker = solarController({ name: "tracker", maxInputV: 100, outputA: 30, outputV: 14.2 });
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: classT(40),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthFt: 4, gauge: 8 });
const roof = solarArray({ name: "roof", openCircuitV: 40, shortCircuitA: 10, maxPowerV: 31, maxPowerA: 9.4 });
cable({
  name: "roof plus",
  from: roof.positive,
  to: tracker.solarPositive,
  lengthFt: 12,
  gauge: 10,
  protect: { ratingA: 15, family: "ISO 8820-12 Type N" },
});
cable({ name: "roof minus", from: tracker.solarNegative, to: roof.negative, lengthFt: 12, gauge: 10 });
