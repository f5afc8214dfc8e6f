import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A camper in millimetres: 1.5 mm² for everything.
build({ name: "metric camper", voltage: 12, insulationC: 70 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 95, internalMilliohm: 6 });
const mainSwitch = disconnect({ name: "switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 6 });
cable({
  name: "plus",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 1,
  mm2: 6,
  protect: { ratingA: 60, distanceMm: 300 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthM: 3, mm2: 4 });
cable({ name: "minus", from: panel.negative, to: bank.negative, lengthM: 4, mm2: 4 });
circuit({ name: "fridge", from: panel.branch, load: 7, oneWayM: 5, mm2: 1.5, protect: 15 });
circuit({ name: "heater", from: panel.branch, load: 12, oneWayM: 6, mm2: 1.5, protect: 25 });
circuit({ name: "lamps", from: panel.branch, load: 4, oneWayM: 8, mm2: 0.75, protect: 10 });
