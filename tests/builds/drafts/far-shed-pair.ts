import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A first draft of a hut: battery house and hut are 15 m apart, one pair of cables between them.
build({ name: "far shed", voltage: 12, insulationC: 75, installedIn: "building" });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 200 });
const off = disconnect({ name: "switch", ratedA: 100 });
const plus = busBar({ name: "hut plus" });
const minus = busBar({ name: "hut minus" });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthM: 0.5,
  mm2: 16,
  protect: { ratingA: 63, family: "UL 248-15 Class T", interruptingA: 20_000 },
});
cable({ name: "long plus", from: off.load, to: plus.stud, lengthM: 15, mm2: 6 });
cable({ name: "long minus", from: minus.stud, to: bank.negative, lengthM: 15, mm2: 6 });
circuit({ name: "lamps", from: plus.stud, returnTo: minus.stud, load: 4, oneWayM: 5, mm2: 1.5, protect: 5 });
circuit({
  name: "fridge",
  from: plus.stud,
  returnTo: minus.stud,
  load: 6,
  oneWayM: 3,
  mm2: 1.5,
  protect: 10,
});
