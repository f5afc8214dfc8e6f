import { battery, build, busBar, cable, circuit, disconnect, shunt } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "gel", capacityAh: 110, internalMilliohm: 6 });
const meter = shunt({ ratedA: 200, ratedMV: 50 });
const back = busBar({ side: "negative", ratedA: 100, studs: 4 });
const off = disconnect({ ratedA: 80 });
cable({ name: "bank to shunt", from: bank.negative, to: meter.batterySide, lengthFt: 1, gauge: 4 });
cable({ name: "shunt to bus", from: meter.systemSide, to: back.stud, lengthFt: 1, gauge: 4 });
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ratingA: 70, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
circuit({
  name: "heater",
  from: off.load,
  returnTo: back.stud,
  load: 12,
  oneWayFt: 8,
  gauge: 10,
  protect: { ratingA: 15, family: "UL 248-15 Class T", distanceIn: 5, interruptingA: 20_000 },
});
