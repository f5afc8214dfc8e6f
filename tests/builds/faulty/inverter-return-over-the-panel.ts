import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter } from "loomwright";

// A van: the inverter's minus was put on the negative bus of the fuse panel, as its stud was near. Both loads together are below the
// ampacity of the panel's return, its fuse is not.
// Expected: error protection/return-conductor at panel minus
// Because: IEC 60364-4-43, 433.1, for the whole loop: the fuse of the inverter is 150 A, and the panel's return of 6 AWG may carry 120 A
//   (33 CFR 183.425(b), Table 5, 105 °C), so a fault that draws 140 A burns it.
// May follow: warning panel/rating at fuse panel
// May follow: warning inverter/supply at panel minus
build({ name: "van with an inverter on the panel", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 250, studs: 6 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 250, studs: 6 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 1.5,
  gauge: "1/0",
  protect: classT(200),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 1.5, gauge: "1/0" });
const panel = fusePanel({
  name: "fuse panel",
  positions: 8,
  ratedA: 100,
  branchRatedA: 30,
  testedBehind: { family: "UL 248-15 Class T", ratingA: 200, interruptingA: 20_000 },
});
cable({ name: "panel plus", from: plus.stud, to: panel.feed, lengthFt: 2, gauge: 6, protect: classT(80) });
cable({ name: "panel minus", from: panel.negative, to: minus.stud, lengthFt: 2, gauge: 6 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 12, gauge: 14, protect: 5 });
const sine = inverter({ name: "inverter", continuousW: 1000, surgeW: 1500, cutOffV: 10.5 });
cable({
  name: "inverter plus",
  from: plus.stud,
  to: sine.positive,
  lengthFt: 3,
  gauge: 2,
  protect: classT(150),
});
cable({ name: "inverter minus", from: sine.negative, to: panel.negative, lengthFt: 2, gauge: 2 });
