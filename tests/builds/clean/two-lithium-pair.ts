import { battery, build, busBar, cable, circuit, disconnect, inverter } from "loomwright";

// Two lithium batteries and an inverter.
build({ name: "two lithium pair", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const plus = busBar({ name: "plus", side: "positive", ratedA: 400, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 400, studs: 6 });
for (const side of ["left", "right"]) {
  const one = battery({
    name: `${side} battery`,
    chemistry: "LiFePO4",
    capacityAh: 200,
    internalMilliohm: 4,
    maxDischargeA: 200,
    maxChargeA: 100,
  });
  cable({
    name: `${side} plus`,
    from: one.positive,
    to: plus.stud,
    lengthFt: 1,
    gauge: "1/0",
    protect: classT(200),
  });
  cable({ name: `${side} minus`, from: one.negative, to: minus.stud, lengthFt: 1, gauge: "1/0" });
}
const off = disconnect({ name: "switch", ratedA: 400 });
cable({ name: "to switch", from: plus.stud, to: off.line, lengthFt: 1, gauge: "4/0" });
const inv = inverter({ name: "inverter", continuousW: 2500, surgeW: 4000, cutOffV: 11 });
circuit({
  name: "inverter pair",
  from: off.load,
  returnTo: minus.stud,
  to: inv,
  oneWayFt: 3,
  gauge: "4/0",
  protect: classT(350),
});
