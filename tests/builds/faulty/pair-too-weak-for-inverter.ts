import { battery, build, busBar, cable, circuit, disconnect, inverter } from "loomwright";

// A bus: two small lithium batteries and an inverter of 3 kW.
// Expected: warning battery/discharge-current at left battery
// Because: The maker's limit: 3,000 W / 0.9 / 11 V = 303 A from two batteries of 100 A each.
build({ name: "pair too weak for inverter", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const plus = busBar({ name: "plus", side: "positive", ratedA: 400, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 400, studs: 6 });
for (const side of ["left", "right"]) {
  const one = battery({
    name: `${side} battery`,
    chemistry: "LiFePO4",
    capacityAh: 100,
    internalMilliohm: 6,
    maxDischargeA: 100,
    maxChargeA: 50,
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
const inv = inverter({ name: "inverter", continuousW: 3000, cutOffV: 11 });
circuit({
  name: "inverter pair",
  from: off.load,
  returnTo: minus.stud,
  to: inv,
  oneWayFt: 4,
  gauge: "4/0",
  protect: classT(400),
});
