import { battery, build, cable, circuit, fusePanel, solarArray, solarController } from "loomwright";

// A pop-up camper: the panel straight on the battery, solar straight on the panel.
build({ name: "pop-up camper", voltage: 12, insulationC: 90 });

const agm = battery({ name: "battery", chemistry: "AGM", capacityAh: 75, maxChargeA: 20 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100, branchRatedA: 20 });
cable({ name: "plus", from: agm.positive, to: panel.feed, lengthFt: 5, gauge: 10 });
cable({ name: "minus", from: panel.negative, to: agm.negative, lengthFt: 5, gauge: 10 });
const roof = solarArray({
  name: "module",
  openCircuitV: 22,
  shortCircuitA: 6,
  maxPowerV: 18,
  maxPowerA: 5.6,
});
const sun = solarController({ name: "controller", maxInputV: 50, outputA: 10 });
circuit({ name: "roof cable", from: roof.positive, to: sun, oneWayFt: 15, gauge: 16 });
cable({ name: "controller plus", from: sun.positive, to: panel.feed, lengthFt: 3, gauge: 16 });
cable({ name: "controller minus", from: sun.negative, to: panel.negative, lengthFt: 3, gauge: 16 });
circuit({ name: "furnace", from: panel.branch, load: 18, oneWayFt: 9, gauge: 14, protect: 25 });
circuit({ name: "water pump", from: panel.branch, load: 6, oneWayFt: 16, gauge: 18, protect: 10 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 20, gauge: 18, protect: 10 });
