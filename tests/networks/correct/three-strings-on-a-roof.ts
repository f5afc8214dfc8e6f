import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

build({ voltage: 24, insulationC: 90, lowestC: -10 });
const bank = battery({ chemistry: "AGM", nominalV: 24, capacityAh: 200, internalMilliohm: 8 });
const bus = busBar({ side: "positive", ratedA: 120, studs: 4 });
const back = busBar({ side: "negative", ratedA: 120, studs: 4 });
const off = disconnect({ ratedA: 125 });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 } as const;
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthM: 0.6,
  mm2: 35,
  protect: { ...classT, ratingA: 100, distanceMm: 150 },
});
cable({ name: "disconnect to bus", from: off.load, to: bus.stud, lengthM: 0.4, mm2: 35 });
cable({ name: "bank return", from: bank.negative, to: back.stud, lengthM: 0.8, mm2: 35 });
const roof = solarArray({
  openCircuitV: 37.6,
  shortCircuitA: 9.2,
  maxPowerV: 31.1,
  maxPowerA: 8.7,
  openCircuitPercentPerC: -0.31,
  maxSeriesFuseA: 15,
  stringFuseA: 15,
  parallel: 3,
});
const controller = solarController({ maxInputV: 100, outputA: 40, outputV: 28.8 });
circuit({ name: "roof to controller", from: roof.positive, to: controller, oneWayM: 8, mm2: 16 });
cable({
  name: "controller, positive",
  from: controller.positive,
  to: bus.stud,
  lengthM: 1.5,
  mm2: 16,
  protectFarEnd: { ...classT, ratingA: 60, distanceMm: 120 },
});
cable({ name: "controller, negative", from: controller.negative, to: back.stud, lengthM: 1.5, mm2: 16 });
circuit({
  name: "pump",
  from: bus.stud,
  returnTo: back.stud,
  load: 6,
  oneWayM: 7,
  mm2: 4,
  critical: true,
  protect: { ...classT, ratingA: 10, distanceMm: 120 },
});
