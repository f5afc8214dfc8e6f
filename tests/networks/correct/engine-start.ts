import { alternator, battery, build, cable, circuit, disconnect, fusePanel, starterMotor } from "loomwright";

// A small boat with a diesel: one battery, a switch, the starter motor on the switch, the alternator on the battery.
build({ insulationC: 105 });
const start = battery({
  name: "start battery",
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  internalMilliohm: 5,
});
const off = disconnect({ name: "battery switch", ratedA: 300 });
cable({ name: "battery to switch", from: start.positive, to: off.line, lengthFt: 4, gauge: "1/0" });
const starter = starterMotor({ name: "starter", crankingA: 220, minimumV: 8 });
cable({ name: "switch to starter", from: off.load, to: starter.positive, lengthFt: 5, gauge: "1/0" });
cable({ name: "engine return", from: starter.negative, to: start.negative, lengthFt: 6, gauge: "1/0" });
const machine = alternator({ name: "alternator", ratedA: 55 });
cable({
  name: "alternator positive",
  from: machine.positive,
  to: start.positive,
  lengthFt: 6,
  gauge: 6,
  protectFarEnd: { ratingA: 80, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
cable({ name: "alternator return", from: machine.negative, to: starter.negative, lengthFt: 2, gauge: 6 });
const panel = fusePanel({ name: "panel", ratedA: 60, positions: 6, negativeBus: true });
cable({
  name: "panel feed",
  from: off.load,
  to: panel.feed,
  lengthFt: 6,
  gauge: 8,
  protect: { ratingA: 40, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
cable({ name: "panel return", from: panel.negative, to: start.negative, lengthFt: 8, gauge: 8 });
circuit({
  name: "lights",
  from: panel.branch,
  returnTo: panel.negative,
  load: 4,
  oneWayFt: 12,
  gauge: 14,
  protect: { ratingA: 10, family: "UL 248-15 Class T", interruptingA: 20_000 },
});
