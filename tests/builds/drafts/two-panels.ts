import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A workboat with two panels on one thin feeder after another.
build({ name: "workboat", voltage: 12, insulationC: 105 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
const batterySwitch = disconnect({ name: "battery switch", ratedA: 200 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: batterySwitch.line,
  lengthFt: 4,
  gauge: 4,
  protect: { ratingA: 200, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 8 },
});
const main = fusePanel({ name: "main panel", positions: 8 });
circuit({
  name: "main feeder",
  from: batterySwitch.load,
  returnTo: bank.negative,
  to: main,
  oneWayFt: 8,
  gauge: 8,
  protect: { ratingA: 100, family: "UL 248-15 Class T", interruptingA: 20_000 },
});
const fore = fusePanel({ name: "fore panel", positions: 6 });
circuit({
  name: "fore feeder",
  from: main.branch,
  to: fore,
  oneWayFt: 20,
  gauge: 12,
  protect: { ratingA: 60, family: "UL 248-15 Class T", interruptingA: 20_000 },
});
const t = { family: "UL 248-15 Class T", interruptingA: 20_000 } as const;
circuit({
  name: "searchlight",
  from: fore.branch,
  load: 10,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...t, ratingA: 35 },
});
circuit({
  name: "wiper",
  from: fore.branch,
  load: 6,
  oneWayFt: 6,
  gauge: 16,
  protect: { ...t, ratingA: 20 },
});
circuit({
  name: "wheelhouse lamps",
  from: main.branch,
  load: 4,
  oneWayFt: 9,
  gauge: 16,
  protect: { ...t, ratingA: 20 },
});
circuit({
  name: "heater",
  from: main.branch,
  load: 15,
  oneWayFt: 6,
  gauge: 14,
  protect: { ...t, ratingA: 15 },
});
