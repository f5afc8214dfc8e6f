import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter } from "loomwright";

// A camper: the inverter's plus comes from the battery bar, its minus was put on the fuse panel's return bus.
// Expected: error conductor/ampacity at panel minus
// Because: 33 CFR 183.425(b), Table 5: 8 AWG may carry 80 A, the inverter returns 130 A.
// May follow: error protection/return-conductor at panel minus
// May follow: error inverter/supply at panel minus
// May follow: error panel/rating at panel
// May follow: warning conductor/voltage-drop at inverter plus
// May follow: warning inverter/supply at panel minus
build({ name: "camper with a panel", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 250, studs: 8 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(200),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: "1/0" });
const panel = fusePanel({ name: "panel", positions: 8, ratedA: 80, branchFamily: "ISO 8820-3 Type C" });
cable({ name: "panel feed", from: plus.stud, to: panel.feed, lengthFt: 3, gauge: 8, protect: classT(60) });
cable({ name: "panel minus", from: panel.negative, to: minus.stud, lengthFt: 3, gauge: 8 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 10, gauge: 14, protect: 5 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 8, gauge: 12, protect: 10 });
const kettle = inverter({ name: "inverter", continuousW: 1_200, efficiencyPercent: 90, cutOffV: 10.5 });
cable({
  name: "inverter plus",
  from: plus.stud,
  to: kettle.positive,
  lengthFt: 3,
  gauge: "1/0",
  protect: classT(175),
});
cable({ name: "inverter minus", from: kettle.negative, to: panel.negative, lengthFt: 2, gauge: "1/0" });
