import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A dinghy on a lake: an electric outboard on a battery of its own, and a lamp.
build({ name: "lake dinghy", voltage: 12, insulationC: 105, installedIn: "boat" });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const kill = disconnect({ name: "kill switch", ratedA: 100 });
cable({
  name: "battery plus",
  from: bank.positive,
  to: kill.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
const outboard = motor({ name: "outboard", runningA: 42, startingA: 55, startingS: 0.2, minimumV: 10.5 });
cable({ name: "outboard plus", from: kill.load, to: outboard.positive, lengthFt: 5, gauge: 6 });
cable({ name: "outboard minus", from: outboard.negative, to: bank.negative, lengthFt: 7, gauge: 6 });
circuit({
  name: "all-round lamp",
  from: kill.load,
  returnTo: bank.negative,
  load: 0.5,
  oneWayFt: 8,
  gauge: 16,
  critical: true,
  protect: { ratingA: 2, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
