import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A cruiser: the bow is far away, and everything there is thin.
build({ name: "cruiser", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "flooded lead-acid",
  capacityAh: 110,
  shortCircuitA: 1800,
});
const batterySwitch = disconnect({ name: "battery switch", ratedA: 150 });
const panel = fusePanel({ name: "helm panel", positions: 10 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: batterySwitch.line,
  lengthFt: 5,
  gauge: 6,
  protect: { ratingA: 100, distanceIn: 20 },
});
circuit({
  name: "helm feeder",
  from: batterySwitch.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 16,
  gauge: 10,
  protect: 60,
});
circuit({
  name: "anchor lamp",
  from: panel.branch,
  load: 1,
  oneWayFt: 40,
  gauge: 16,
  protect: 10,
  critical: true,
});
circuit({
  name: "side lamps",
  from: panel.branch,
  load: 3,
  oneWayFt: 28,
  gauge: 16,
  protect: 10,
  critical: true,
});
circuit({
  name: "bilge pump",
  from: panel.branch,
  load: 6,
  oneWayFt: 20,
  gauge: 14,
  protect: 30,
  critical: true,
});
circuit({ name: "radio", from: panel.branch, load: 5, oneWayFt: 10, gauge: 16, protect: 15, critical: true });
