import {
  battery,
  breaker,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  motor,
  relay,
  shoreCharger,
} from "loomwright";

// A day sailer of 24 V with a windlass behind its own breaker and contactor.
build({ name: "day sailer", voltage: 24, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const of12 = {
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 110,
  internalMilliohm: 4,
  maxDischargeA: 500,
  maxChargeA: 30,
} as const;
const lower = battery({ ...of12, name: "lower battery" });
const upper = battery({ ...of12, name: "upper battery" });
cable({ name: "link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
const off = disconnect({ name: "battery switch", ratedA: 250 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 250, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 250, studs: 7 });
cable({ name: "bank plus", from: upper.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(175) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: lower.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
const guard = breaker({
  name: "windlass breaker",
  ratingA: 70,
  interruptingA: 5000,
  ratedV: 48,
  on: plus.stud,
});
const contactor = relay({ name: "windlass contactor", ratedA: 80, momentaryA: 250 });
const windlass = motor({ name: "windlass", runningA: 50, startingA: 120, startingS: 0.3, continuous: false });
cable({
  name: "to contactor",
  from: guard.load,
  to: contactor.line,
  lengthFt: 3,
  gauge: 4,
  continuous: false,
});
cable({
  name: "windlass plus",
  from: contactor.load,
  to: windlass.positive,
  lengthFt: 18,
  gauge: 4,
  continuous: false,
});
cable({
  name: "windlass minus",
  from: windlass.negative,
  to: minus.stud,
  lengthFt: 20,
  gauge: 4,
  continuous: false,
});
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({
  ...rails,
  name: "running lamps",
  load: 1.5,
  critical: true,
  oneWayFt: 20,
  gauge: 14,
  protect: classT(3),
});
circuit({ ...rails, name: "plotter", load: 2, oneWayFt: 12, gauge: 14, protect: classT(3) });
circuit({
  name: "bilge pump",
  from: upper.positive,
  returnTo: minus.stud,
  load: 3,
  critical: true,
  oneWayFt: 10,
  gauge: 14,
  protect: classT(6),
});
const charger = shoreCharger({ name: "charger", outputA: 20, outputV: 28.6 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: classT(30),
});
cable({ name: "charger minus", from: charger.negative, to: minus.stud, lengthFt: 4, gauge: 10 });
