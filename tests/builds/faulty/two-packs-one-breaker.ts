import { battery, breaker, build, busBar, cable, circuit, inverter } from "loomwright";

// A workshop of 48 V: the main breaker was chosen for one pack; then a second one came.
// Expected: error protection/interrupting at main breaker
// Because: IEC 60364-4-43, 434.5.1: both packs deliver about 4.6 kA into a short behind it, and it interrupts 3 kA.
build({ name: "pottery", voltage: 48, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const plus = busBar({ name: "plus", side: "positive", ratedA: 250, studs: 4 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 250, studs: 4 });
for (const side of ["left", "right"]) {
  const pack = battery({
    name: `${side} pack`,
    chemistry: "LiFePO4",
    nominalV: 48,
    capacityAh: 100,
    shortCircuitA: 2500,
    maxDischargeA: 100,
    maxChargeA: 50,
  });
  cable({
    name: `${side} plus`,
    from: pack.positive,
    to: plus.stud,
    lengthFt: 1,
    gauge: 2,
    protect: classT(125),
  });
  cable({ name: `${side} minus`, from: pack.negative, to: minus.stud, lengthFt: 1, gauge: 2 });
}
const main = breaker({ name: "main breaker", ratingA: 150, interruptingA: 3000, ratedV: 80, on: plus.stud });
const kiln = inverter({ name: "inverter", continuousW: 4500, cutOffV: 44, efficiencyPercent: 94 });
circuit({ name: "inverter pair", from: main.load, returnTo: minus.stud, to: kiln, oneWayFt: 3, gauge: 2 });
