import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// One long trunk to a far panel: every branch loses a little too much, the trunk is too thin.
build({ name: "far panel", voltage: 12 });

const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 200 });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "bank to switch", from: bank.positive, to: off.line, lengthFt: 2, gauge: 6, protect: 80 });
const panel = fusePanel({ name: "far panel", positions: 8 });
circuit({
  name: "trunk",
  from: off.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 35,
  gauge: 10,
  protect: 40,
});
circuit({ name: "reading lamp", from: panel.branch, load: 1, oneWayFt: 10, gauge: 18, protect: 5 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 6, gauge: 14, protect: 10 });
circuit({ name: "pump", from: panel.branch, load: 6, oneWayFt: 15, gauge: 14, protect: 10 });
circuit({ name: "heater", from: panel.branch, load: 4, oneWayFt: 5, gauge: 14, protect: 7.5 });
