import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

build({ insulationC: 105 });
const positive = busBar({ side: "positive", ratedA: 250, studs: 6 });
const negative = busBar({ side: "negative", ratedA: 250, studs: 6 });
for (const place of ["left", "right"]) {
  const one = battery({
    name: `battery, ${place}`,
    chemistry: "LiFePO4",
    capacityAh: 100,
    internalMilliohm: 6,
  });
  cable({
    name: `positive, ${place}`,
    from: one.positive,
    to: positive.stud,
    lengthFt: 2,
    gauge: 2,
    protect: { ratingA: 125, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
  });
  cable({ name: `negative, ${place}`, from: one.negative, to: negative.stud, lengthFt: 2, gauge: 2 });
}
const off = disconnect({ name: "main disconnect", ratedA: 150 });
const out = busBar({ name: "load bus", side: "positive", ratedA: 150, studs: 4 });
cable({ name: "to the disconnect", from: positive.stud, to: off.line, lengthFt: 1, gauge: "4/0" });
cable({ name: "from the disconnect", from: off.load, to: out.stud, lengthFt: 1, gauge: "4/0" });
circuit({
  name: "hoist",
  from: out.stud,
  returnTo: negative.stud,
  load: 60,
  oneWayFt: 6,
  gauge: 4,
  protect: { ratingA: 80, family: "UL 248-15 Class T", distanceIn: 5, interruptingA: 20_000 },
});
