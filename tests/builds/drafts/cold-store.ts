import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A cold store trailer: a compressor that starts hard at the end of a thin pair.
build({ name: "cold store", voltage: 12, insulationC: 90 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 120, internalMilliohm: 5 });
const mainSwitch = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "plus", from: bank.positive, to: mainSwitch.line, lengthFt: 3, gauge: 8, protect: 60 });
const cold = motor({ name: "compressor", runningA: 18, startingA: 70, minimumV: 10.5 });
circuit({
  name: "compressor cable",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: cold,
  oneWayFt: 14,
  gauge: 14,
  protect: 20,
});
circuit({
  name: "door lamp",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 1,
  oneWayFt: 12,
  gauge: 18,
  protect: 20,
});
