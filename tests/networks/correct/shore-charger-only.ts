import { battery, build, busBar, cable, circuit, disconnect, shoreCharger } from "loomwright";

build({ insulationC: 90 });
const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3, maxChargeA: 60 });
const bus = busBar({ side: "positive", ratedA: 100, studs: 4 });
const back = busBar({ side: "negative", ratedA: 100, studs: 4 });
const off = disconnect({ ratedA: 100 });
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthM: 0.5,
  mm2: 35,
  protect: { ratingA: 100, family: "UL 248-15 Class T", distanceMm: 150, interruptingA: 20_000 },
});
cable({ name: "disconnect to bus", from: off.load, to: bus.stud, lengthM: 0.5, mm2: 35 });
cable({ name: "bank return", from: bank.negative, to: back.stud, lengthM: 0.7, mm2: 35 });
const charger = shoreCharger({ outputA: 25 });
cable({
  name: "charger, positive",
  from: charger.positive,
  to: bus.stud,
  lengthM: 2,
  mm2: 10,
  protectFarEnd: { ratingA: 40, family: "UL 248-15 Class T", distanceMm: 120, interruptingA: 20_000 },
});
cable({ name: "charger, negative", from: charger.negative, to: back.stud, lengthM: 2, mm2: 10 });
circuit({
  name: "radio",
  from: bus.stud,
  returnTo: back.stud,
  load: 4,
  oneWayM: 3,
  mm2: 2.5,
  protect: { ratingA: 6, family: "UL 248-15 Class T", distanceMm: 100, interruptingA: 20_000 },
});
