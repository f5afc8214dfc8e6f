import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A caravan: plus and minus of the module are swapped at the controller.
// Expected: error network/unconnected at roof or tracker or roof plus or roof minus or left wire or right wire
// Because: Nameplate: the controller's input has one polarity; many are destroyed by the other one.
build({ name: "caravan with a module", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 200,
  maxChargeA: 30,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 150, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const tracker = solarController({ name: "tracker", maxInputV: 50, outputA: 20, outputV: 14.4 });
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: classT(30),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthFt: 4, gauge: 10 });
const roof = solarArray({ name: "roof", openCircuitV: 22, shortCircuitA: 10, maxPowerV: 18, maxPowerA: 9.4 });
const left = busBar({ name: "left gland", ratedA: 30, studs: 2 });
const right = busBar({ name: "right gland", ratedA: 30, studs: 2 });
cable({ name: "roof plus", from: roof.positive, to: left.stud, lengthFt: 2, gauge: 10 });
cable({ name: "roof minus", from: roof.negative, to: right.stud, lengthFt: 2, gauge: 10 });
cable({ name: "left wire", from: left.stud, to: tracker.solarNegative, lengthFt: 10, gauge: 10 });
cable({ name: "right wire", from: right.stud, to: tracker.solarPositive, lengthFt: 10, gauge: 10 });
