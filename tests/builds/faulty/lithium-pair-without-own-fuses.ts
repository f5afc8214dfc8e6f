import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A studio bus: two lithium batteries in parallel behind one fuse that both share.
// Expected: error protection/unprotected-path at first plus or second plus
// Because: 33 CFR 183.460(a), and common practice: a fuse at each battery, or each feeds a fault of the other unfused.
build({ name: "lithium pair without own fuses", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const plus = busBar({ name: "bank plus", side: "positive", ratedA: 250 });
const minus = busBar({ name: "bank minus", side: "negative", ratedA: 250 });
for (const number of ["first", "second"]) {
  const cell = battery({
    name: `${number} battery`,
    chemistry: "LiFePO4",
    capacityAh: 100,
    internalMilliohm: 5,
    maxDischargeA: 100,
  });
  cable({ name: `${number} plus`, from: cell.positive, to: plus.stud, lengthFt: 2, gauge: 2 });
  cable({ name: `${number} minus`, from: cell.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
}
const mainSwitch = disconnect({ name: "main switch", ratedA: 250 });
cable({
  name: "bank to switch",
  from: plus.stud,
  to: mainSwitch.line,
  lengthFt: 1,
  gauge: "1/0",
  protect: { ...classT, ratingA: 150, distanceIn: 6 },
});
circuit({
  name: "fans",
  from: mainSwitch.load,
  returnTo: minus.stud,
  load: 60,
  oneWayFt: 5,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
