import { battery, build, busBar, cable, circuit, disconnect, load } from "loomwright";

// A workshop van: the minus of the fan is on the plus bar, beside its plus.
// Expected: error network/no-return at fan or fan wires
// Because: No clause needed: both ends of the fan are at plus; it never runs, and its minus wire is live.
// May follow: error protection/unprotected-path at fan wires
// May follow: error network/unconnected at fan
// May follow: warning network/unconnected at fan
build({ name: "workshop van with a fan", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
const plus = busBar({ name: "plus bar", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bar", ratedA: 250, studs: 8 });
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
const fan = load({ name: "fan", currentA: 4 });
cable({ name: "fan plus", from: plus.stud, to: fan.positive, lengthFt: 6, gauge: 14, protect: classT(6) });
cable({ name: "fan wires", from: plus.stud, to: fan.negative, lengthFt: 6, gauge: 14, protect: classT(6) });
