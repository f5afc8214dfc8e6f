import { battery, build, busBar, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A barge: a second charger was connected to the small bus bar of the first one.
// Expected: warning bus/rating at charging bus
// Because: The maker's rating of 100 A: both chargers together drive 140 A through the bar to the bank.
build({ name: "coal barge", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 800,
  internalMilliohm: 2,
  maxDischargeA: 500,
  maxChargeA: 160,
});
const off = disconnect({ name: "switch", ratedA: 300 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "2/0",
  protect: classT(250),
});
const bus = busBar({ name: "charging bus", side: "positive", ratedA: 100, studs: 4 });
const minus = busBar({ name: "minus bus", side: "negative", ratedA: 300, studs: 6 });
cable({ name: "bus plus", from: off.load, to: bus.stud, lengthFt: 1, gauge: "2/0" });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: "2/0" });
for (const name of ["old", "new"]) {
  const charger = shoreCharger({ name: `${name} charger`, outputA: 70, outputV: 14.4 });
  cable({
    name: `${name} plus`,
    from: charger.positive,
    to: bus.stud,
    lengthFt: 4,
    gauge: 4,
    protectFarEnd: classT(100),
  });
  cable({ name: `${name} minus`, from: charger.negative, to: minus.stud, lengthFt: 4, gauge: 4 });
}
circuit({
  name: "cabin lamps",
  from: off.load,
  returnTo: minus.stud,
  load: 5,
  oneWayFt: 15,
  gauge: 12,
  protect: classT(10),
});
