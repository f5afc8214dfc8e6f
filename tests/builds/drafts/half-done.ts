import { battery, build, cable, circuit, disconnect } from "loomwright";

// A plan of which half is right.
build({ name: "half done", voltage: 12, insulationC: 105 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
const mainSwitch = disconnect({ name: "switch", ratedA: 100 });
const t = { family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 5 } as const;
cable({
  name: "plus",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ...t, ratingA: 80 },
});
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...t, ratingA: 6 },
});
circuit({
  name: "pump",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 10,
  oneWayFt: 25,
  gauge: 16,
  protect: { ...t, ratingA: 30 },
});
circuit({
  name: "heater",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 30,
  oneWayFt: 8,
  gauge: 14,
  protect: { ...t, ratingA: 60 },
});
