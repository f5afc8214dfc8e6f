import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// One thin trunk to the end of a garden, with everything on it.
build({ name: "garden", voltage: 12, insulationC: 75 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 150, internalMilliohm: 4 });
const mainSwitch = disconnect({ name: "switch", ratedA: 60 });
cable({
  name: "plus",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 8,
  protect: { ratingA: 40, family: "UL 248-15 Class T", interruptingA: 20_000 },
});
const panel = fusePanel({ name: "garden panel", positions: 6 });
circuit({
  name: "trunk",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 60,
  gauge: 12,
  protect: { ratingA: 25, family: "UL 248-15 Class T", interruptingA: 20_000 },
});
circuit({ name: "fountain", from: panel.branch, load: 8, oneWayFt: 10, gauge: 14, protect: 10 });
circuit({ name: "path lamps", from: panel.branch, load: 4, oneWayFt: 25, gauge: 16, protect: 10 });
