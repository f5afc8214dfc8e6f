import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter, motor } from "loomwright";

// A houseboat of 24 V: two panels, one feeder for both, a shower pump that starts hard.
build({ name: "houseboat", voltage: 24, insulationC: 75 });

const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  nominalV: 24,
  capacityAh: 400,
  internalMilliohm: 8,
});
const off = disconnect({ name: "switch", ratedA: 250 });
const bus = busBar({ name: "plus bus", ratedA: 250 });
const minus = busBar({ name: "minus bus", side: "negative", ratedA: 250 });
cable({ name: "bank to switch", from: bank.positive, to: off.line, lengthFt: 4, gauge: 2, protect: 200 });
cable({ name: "switch to bus", from: off.load, to: bus.stud, lengthFt: 2, gauge: 4 });
cable({ name: "bus to bank", from: minus.stud, to: bank.negative, lengthFt: 5, gauge: 4 });
const aft = fusePanel({ name: "aft panel", positions: 6 });
const fore = fusePanel({ name: "fore panel", positions: 6 });
cable({ name: "aft feed", from: bus.stud, to: aft.feed, lengthFt: 6, gauge: 10, protect: 60 });
cable({ name: "aft return", from: aft.negative, to: minus.stud, lengthFt: 6, gauge: 12 });
cable({ name: "fore feed", from: bus.stud, to: fore.feed, lengthFt: 40, gauge: 10, protect: 30 });
cable({ name: "fore return", from: fore.negative, to: minus.stud, lengthFt: 40, gauge: 10 });
const shower = motor({ name: "shower pump", runningA: 5, startingA: 35 });
circuit({
  name: "shower",
  from: fore.branch,
  to: shower,
  oneWayFt: 12,
  gauge: 16,
  protect: { ratingA: 7.5, family: "ISO 8820-3 Type F" },
});
circuit({ name: "fore lamps", from: fore.branch, load: 3, oneWayFt: 30, gauge: 18, protect: 5 });
circuit({ name: "heater", from: aft.branch, load: 12, oneWayFt: 10, gauge: 14, protect: 15 });
circuit({ name: "fridge", from: aft.branch, load: 4, oneWayFt: 15, gauge: 16, protect: 10 });
const mains = inverter({ name: "inverter", continuousW: 2000 });
circuit({
  name: "inverter leads",
  from: bus.stud,
  returnTo: minus.stud,
  to: mains,
  oneWayFt: 8,
  gauge: 4,
  protect: 100,
});
