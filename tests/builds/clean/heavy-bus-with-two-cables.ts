import { battery, build, busBar, cable, circuit, disconnect, inverter } from "loomwright";

// A bus home: a pair of 4/0 AWG cables feeds the inverter, behind a fuse of its own.
build({ name: "heavy bus", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 400,
  internalMilliohm: 2,
  maxDischargeA: 400,
  maxChargeA: 200,
});
const off = disconnect({ name: "main switch", ratedA: 400 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 400, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 400, studs: 8 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "4/0",
  protect: classT(350),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "4/0" });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: "4/0" });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
circuit({
  ...rails,
  name: "inverter pair",
  to: inverter({ name: "inverter", continuousW: 2_000, efficiencyPercent: 92, cutOffV: 11 }),
  oneWayFt: 3,
  gauge: "4/0",
  protect: classT(300),
});
circuit({ ...rails, name: "oven fan", load: 12, oneWayFt: 6, gauge: 10, protect: classT(20) });
