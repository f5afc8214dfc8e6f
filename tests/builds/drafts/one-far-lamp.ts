import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// Only one lamp at the end of a thin wire loses a little too much.
build({ name: "one far lamp", voltage: 12 });

const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "bank to switch", from: bank.positive, to: off.line, lengthFt: 2, gauge: 6, protect: 60 });
const panel = fusePanel({ name: "panel", positions: 8 });
circuit({
  name: "feeder",
  from: off.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 12,
  gauge: 8,
  protect: 50,
});
circuit({ name: "awning lamp", from: panel.branch, load: 2, oneWayFt: 30, gauge: 16, protect: 5 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 6, gauge: 12, protect: 10 });
circuit({ name: "heater", from: panel.branch, load: 10, oneWayFt: 5, gauge: 12, protect: 15 });
