import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A van: the in-line holder of the diesel heater is marked 20 A, and a 30 A fuse is in it.
// Expected: error protection/holder-rating at diesel heater
// Because: Common practice (no source): the maker marks a holder with the largest fuse that it takes; its wires are thinner than the run's.
build({ name: "plumber van", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
circuit({ ...rails, name: "fridge", load: 5, oneWayFt: 8, gauge: 12, protect: classT(10) });
circuit({
  ...rails,
  name: "diesel heater",
  load: 12,
  oneWayFt: 9,
  gauge: 10,
  continuous: false,
  protect: { ...classT(30), holderRatedA: 20 },
});
