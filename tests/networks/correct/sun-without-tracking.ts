import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

build({ insulationC: 105, lowestC: -5 });
const bank = battery({ chemistry: "flooded lead-acid", capacityAh: 100, shortCircuitA: 1_500 });
const bus = busBar({ side: "positive", ratedA: 60, studs: 4 });
const off = disconnect({ ratedA: 60 });
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 8,
  protect: { ratingA: 50, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
cable({ name: "disconnect to bus", from: off.load, to: bus.stud, lengthFt: 1, gauge: 8 });
const panelOnDoor = solarArray({ openCircuitV: 21.8, shortCircuitA: 5.9, maxPowerV: 17.8, maxPowerA: 5.6 });
const controller = solarController({ maxInputV: 50, outputA: 10, tracking: false });
circuit({ name: "door to controller", from: panelOnDoor.positive, to: controller, oneWayFt: 10, gauge: 12 });
cable({
  name: "controller, positive",
  from: controller.positive,
  to: bus.stud,
  lengthFt: 3,
  gauge: 12,
  protectFarEnd: { ratingA: 15, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20_000 },
});
cable({ name: "controller, negative", from: controller.negative, to: bank.negative, lengthFt: 4, gauge: 12 });
circuit({
  name: "lamp",
  from: bus.stud,
  returnTo: bank.negative,
  load: 2,
  oneWayFt: 6,
  gauge: 14,
  protect: { ratingA: 3, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20_000 },
});
