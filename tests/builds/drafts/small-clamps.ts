import { battery, build, cable, circuit, disconnect, fusePanel, motor } from "loomwright";

// A boat with a cheap panel: its clamps take 12 AWG, and the far loads would need more.
build({ name: "small clamps", voltage: 12, insulationC: 105, installedIn: "boat" });

const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 120, internalMilliohm: 5 });
const off = disconnect({ name: "switch", ratedA: 100, largestGauge: 6 });
const panel = fusePanel({ name: "panel", positions: 8, largestGauge: 8, branchLargestGauge: 12 });
cable({ name: "battery to switch", from: bank.positive, to: off.line, lengthFt: 3, gauge: 8, protect: 60 });
circuit({
  name: "feeder",
  from: off.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 18,
  gauge: 10,
  protect: 50,
});
circuit({
  name: "anchor lamp",
  from: panel.branch,
  load: 2,
  oneWayFt: 45,
  gauge: 16,
  protect: 5,
  critical: true,
});
circuit({ name: "fridge", from: panel.branch, load: 6, oneWayFt: 20, gauge: 16, protect: 10 });
const pump = motor({ name: "deck wash pump", runningA: 12, startingA: 40, largestGauge: 10 });
circuit({ name: "deck wash", from: panel.branch, to: pump, oneWayFt: 35, gauge: 14, protect: 20 });
circuit({
  name: "radio",
  from: panel.branch,
  load: 5,
  oneWayFt: 10,
  gauge: 16,
  protect: 7.5,
  minimumV: 11,
  largestGauge: 14,
});
