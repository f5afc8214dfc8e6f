import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A hut of 24 V: two batteries in series with a link of speaker wire.
build({ name: "hut", voltage: 24, insulationC: 90 });

const lower = battery({
  name: "lower battery",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 150,
  internalMilliohm: 4,
});
const upper = battery({
  name: "upper battery",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 150,
  internalMilliohm: 4,
});
const mainSwitch = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "link", from: lower.positive, to: upper.negative, lengthFt: 2, gauge: 10 });
cable({ name: "plus", from: upper.positive, to: mainSwitch.line, lengthFt: 3, gauge: 10, protect: 100 });
const kitchen = inverter({ name: "inverter", continuousW: 1000 });
circuit({
  name: "inverter cable",
  from: mainSwitch.load,
  returnTo: lower.negative,
  to: kitchen,
  oneWayFt: 6,
  gauge: 10,
  protect: 60,
});
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: lower.negative,
  load: 4,
  oneWayFt: 40,
  gauge: 16,
  protect: 15,
});
