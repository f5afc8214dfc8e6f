import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A hut of 24 V from two strings of two lithium batteries, whose middles are joined as well.
// Expected: warning battery/links at middle link
// Because: Common practice and makers' manuals: batteries with a protection of their own are not joined in the middle; the link has no fuse, and one string feeds a short of the other.
build({ name: "joined middles", voltage: 24, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const plus = busBar({ name: "plus", side: "positive", ratedA: 200, studs: 4 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 200, studs: 4 });
const string = (side: string) => {
  const of12 = {
    chemistry: "LiFePO4",
    capacityAh: 100,
    nominalV: 12,
    internalMilliohm: 5,
    maxDischargeA: 100,
    maxChargeA: 50,
  } as const;
  const lower = battery({ ...of12, name: `${side} lower` });
  const upper = battery({ ...of12, name: `${side} upper` });
  cable({ name: `${side} link`, from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
  cable({
    name: `${side} plus`,
    from: upper.positive,
    to: plus.stud,
    lengthFt: 2,
    gauge: 2,
    protect: classT(100),
  });
  cable({ name: `${side} minus`, from: lower.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
  return lower;
};
const left = string("left");
const right = string("right");
cable({ name: "middle link", from: left.positive, to: right.positive, lengthFt: 1, gauge: 2 });
const off = disconnect({ name: "switch", ratedA: 200 });
cable({ name: "to switch", from: plus.stud, to: off.line, lengthFt: 1, gauge: 2, protect: classT(150) });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: minus.stud,
  load: 5,
  oneWayFt: 12,
  gauge: 12,
  protect: classT(10),
});
