import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A windlass and a bow thruster on one foredeck feeder.
build({ name: "motor cruiser", voltage: 12, insulationC: 105 });

const bank = battery({ name: "bow battery", chemistry: "AGM", capacityAh: 110, internalMilliohm: 4 });
const off = disconnect({ name: "bow switch", ratedA: 300 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: off.line,
  lengthFt: 3,
  gauge: 1,
  protect: { ratingA: 200, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 },
});
const windlass = motor({
  name: "windlass",
  runningA: 60,
  startingA: 240,
  startingS: 1,
  continuous: false,
  minimumV: 9.5,
});
circuit({
  name: "windlass leads",
  from: off.load,
  returnTo: bank.negative,
  to: windlass,
  oneWayFt: 12,
  gauge: 6,
  protect: { ratingA: 70, family: "ISO 8820-5 Type SF 30" },
});
const thruster = motor({ name: "thruster", runningA: 150, startingA: 400, continuous: false, minimumV: 9 });
circuit({
  name: "thruster leads",
  from: off.load,
  returnTo: bank.negative,
  to: thruster,
  oneWayFt: 8,
  gauge: 4,
  protect: { ratingA: 150, family: "ISO 8820-5 Type SF 30" },
});
