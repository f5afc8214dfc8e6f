import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

build({ insulationC: 90, lowestC: -20 });
const bank = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5 });
const bus = busBar({ side: "positive", ratedA: 80, studs: 4 });
const back = busBar({ side: "negative", ratedA: 80, studs: 4 });
const off = disconnect({ ratedA: 80 });
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthM: 0.5,
  mm2: 25,
  protect: { ratingA: 80, family: "UL 248-15 Class T", distanceMm: 150, interruptingA: 20_000 },
});
cable({ name: "disconnect to bus", from: off.load, to: bus.stud, lengthM: 0.5, mm2: 25 });
cable({ name: "bank return", from: bank.negative, to: back.stud, lengthM: 0.7, mm2: 25 });
const roof = solarArray({
  openCircuitV: 22.5,
  shortCircuitA: 9.8,
  maxPowerV: 18.6,
  maxPowerA: 9.2,
  openCircuitPercentPerC: -0.3,
  series: 2,
});
const controller = solarController({ maxInputV: 75, outputA: 25 });
circuit({ name: "roof to controller", from: roof.positive, to: controller, oneWayM: 5, mm2: 6 });
cable({
  name: "controller, positive",
  from: controller.positive,
  to: bus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: { ratingA: 40, family: "UL 248-15 Class T", distanceMm: 120, interruptingA: 20_000 },
});
cable({ name: "controller, negative", from: controller.negative, to: back.stud, lengthM: 1, mm2: 10 });
circuit({
  name: "lights",
  from: bus.stud,
  returnTo: back.stud,
  load: 3,
  oneWayM: 4,
  mm2: 1.5,
  protect: { ratingA: 6, family: "UL 248-15 Class T", distanceMm: 100, interruptingA: 20_000 },
});
