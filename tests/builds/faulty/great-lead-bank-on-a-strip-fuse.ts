import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A houseboat: six AGM batteries behind one strip fuse.
// Expected: error protection/interrupting at to switch
// Because: IEC 60364-4-43, 434.5.1: six batteries of 2.4 kA each deliver more than the 2,000 A that ISO 8820-5 asks of the fuse.
build({ name: "houseboat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const plus = busBar({ name: "bank plus", side: "positive", ratedA: 400, studs: 8 });
const minus = busBar({ name: "bank minus", side: "negative", ratedA: 400, studs: 8 });
for (const number of [1, 2, 3, 4, 5, 6]) {
  const one = battery({
    name: `battery ${number}`,
    chemistry: "AGM",
    capacityAh: 110,
    shortCircuitA: 2400,
    maxDischargeA: 300,
    maxChargeA: 30,
  });
  cable({
    name: `plus ${number}`,
    from: one.positive,
    to: plus.stud,
    lengthFt: 2,
    gauge: 2,
    protect: classT(125),
  });
  cable({ name: `minus ${number}`, from: one.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
}
const off = disconnect({ name: "switch", ratedA: 300 });
cable({
  name: "to switch",
  from: plus.stud,
  to: off.line,
  lengthFt: 1,
  gauge: "2/0",
  protect: { ratingA: 250, family: "ISO 8820-5 Type SF 51", distanceIn: 5 },
});
circuit({
  name: "saloon",
  from: off.load,
  returnTo: minus.stud,
  load: 20,
  oneWayFt: 15,
  gauge: 6,
  protect: classT(30),
});
