import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A milk float: a bar bought as a set came with a link between plus and minus, and nobody took it out.
// Expected: error network/shorted at set link
// Because: No clause needed: it is a short.
// May follow: error conductor/ampacity at set link
// May follow: error protection/unprotected-path at set link
// May follow: error conductor/voltage-drop at lamps
build({ name: "milk float with a set", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bar", ratedA: 150, studs: 8 });
const minus = busBar({ name: "minus bar", ratedA: 150, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
cable({ name: "set link", from: plus.stud, to: minus.stud, lengthFt: 0.5, gauge: 4 });
