import { battery, build, busBar, cable, chassis, circuit, disconnect } from "loomwright";

// An aluminium boat: every return has a conductor, and the hull is bonded in one place.
build({ name: "bonded boat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 60,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 150, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
const hull = chassis({ name: "hull", milliohm: 0.5 });
cable({ name: "bond", from: minus.stud, to: hull.bond, lengthFt: 2, gauge: 4 });
circuit({ ...rails, name: "deck lights", load: 6, oneWayFt: 10, gauge: 12, protect: classT(10) });
circuit({
  ...rails,
  name: "wash pump",
  load: 6,
  continuous: false,
  oneWayFt: 10,
  gauge: 12,
  protect: classT(10),
});
