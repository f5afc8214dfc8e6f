import { battery, build, cable, circuit, fuseHolder, fusePanel, inverter } from "loomwright";

// A camper whose manuals name their fuses, and whose builder took what was in the drawer.
build({ name: "fuses from the drawer", voltage: 12, installedIn: "vehicle" });

const bank = battery({ name: "battery", chemistry: "LiFePO4", capacityAh: 100, maxDischargeA: 100 });
const main = fuseHolder({ name: "main fuse", ratingA: 150, largestGauge: 4 });
const panel = fusePanel({ name: "panel", positions: 6, branchLargestGauge: 10, ratedA: 100 });
cable({ name: "battery to fuse", from: bank.positive, to: main.line, lengthFt: 0.5, gauge: 6 });
cable({ name: "fuse to panel", from: main.load, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: "panel to battery", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 6 });
circuit({
  name: "fridge",
  from: panel.branch,
  load: 5,
  oneWayFt: 20,
  gauge: 14,
  protect: 30,
  maxFuseA: 10,
  minimumV: 10.8,
});
circuit({ name: "heater", from: panel.branch, load: 8, oneWayFt: 12, gauge: 16, protect: 25, maxFuseA: 15 });
circuit({ name: "pump", from: panel.branch, load: 6, oneWayFt: 16, gauge: 16, protect: 20, maxFuseA: 7.5 });
const mains = inverter({ name: "inverter", continuousW: 300, maxFuseA: 40, largestGauge: 6 });
circuit({ name: "inverter leads", from: panel.branch, to: mains, oneWayFt: 6, gauge: 12, protect: 60 });
