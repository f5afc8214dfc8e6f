import { battery, build, busBar, cable, circuit, disconnect, motor, relay } from "loomwright";

// A tender: a charging relay between two equal batteries, a fuse at each battery's end.
build({ name: "tender", voltage: 12, insulationC: 105, installedIn: "boat" });
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
const bow = battery({
  name: "bow",
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
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const combiner = relay({ name: "charging relay", ratedA: 120 });
cable({
  name: "to relay",
  from: bank.positive,
  to: combiner.line,
  lengthFt: 1,
  gauge: 6,
  protect: classT(80),
});
cable({
  name: "bow link",
  from: combiner.load,
  to: bow.positive,
  lengthFt: 8,
  gauge: 6,
  protectFarEnd: classT(80),
});
cable({ name: "bow minus", from: bow.negative, to: minus.stud, lengthFt: 8, gauge: 4 });
const bowOff = disconnect({ name: "bow switch", ratedA: 100 });
cable({ name: "bow plus", from: bow.positive, to: bowOff.line, lengthFt: 1, gauge: 4, protect: classT(100) });
circuit({
  name: "windlass",
  from: bowOff.load,
  returnTo: bow.negative,
  to: motor({ name: "windlass motor", runningA: 60, startingA: 90, continuous: false }),
  oneWayFt: 4,
  gauge: 4,
});
