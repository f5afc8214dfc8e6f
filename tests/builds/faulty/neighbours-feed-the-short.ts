import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A tiny house: three packs side by side, each with a breaker that interrupts 5,000 A. A short in one lead is fed by the other two as well.
// Expected: error protection/interrupting at first plus or second plus or third plus
// Because: IEC 60364-4-43, 434.5.1: the breaking capacity is at least the prospective current at its place: two packs give 8,000 A.
build({ name: "tiny house with three packs", voltage: 12, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 400, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 400, studs: 8 });
for (const name of ["first", "second", "third"]) {
  const pack = battery({
    name,
    chemistry: "LiFePO4",
    capacityAh: 200,
    internalMilliohm: 2.5,
    maxDischargeA: 150,
    maxChargeA: 100,
  });
  cable({
    name: `${name} plus`,
    from: pack.positive,
    to: plus.stud,
    lengthFt: 1,
    gauge: "1/0",
    protect: { ratingA: 150, family: "circuit breaker", interruptingA: 5_000, ratedV: 60, distanceIn: 5 },
  });
  cable({ name: `${name} minus`, from: pack.negative, to: minus.stud, lengthFt: 1, gauge: "1/0" });
}
const off = disconnect({ name: "main switch", ratedA: 300 });
cable({ name: "to switch", from: plus.stud, to: off.line, lengthFt: 1, gauge: "1/0", protect: classT(200) });
circuit({
  name: "boiler",
  from: off.load,
  returnTo: minus.stud,
  load: 60,
  oneWayFt: 6,
  gauge: 2,
  protect: classT(80),
});
circuit({
  name: "lamps",
  from: off.load,
  returnTo: minus.stud,
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: classT(6),
});
