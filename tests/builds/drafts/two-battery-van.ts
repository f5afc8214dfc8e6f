import { alternator, battery, build, cable, circuit, disconnect, fusePanel, relay } from "loomwright";

// A split-charge relay with the thin wire that came in its kit.
build({ name: "split-charge van", voltage: 12, insulationC: 105 });

const start = battery({ name: "start battery", chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
const leisure = battery({ name: "leisure battery", chemistry: "AGM", capacityAh: 100, internalMilliohm: 6 });
const engine = alternator({ name: "alternator", ratedA: 90 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: { ratingA: 150, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 4, gauge: 6 });
const split = relay({ name: "relay", ratedA: 140 });
cable({
  name: "start to relay",
  from: start.positive,
  to: split.line,
  lengthFt: 3,
  gauge: 8,
  protect: { ratingA: 100, distanceIn: 6 },
});
cable({ name: "relay to leisure", from: split.load, to: leisure.positive, lengthFt: 16, gauge: 8 });
cable({ name: "minus link", from: start.negative, to: leisure.negative, lengthFt: 16, gauge: 10 });
const panel = fusePanel({ name: "panel", positions: 6 });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({
  name: "leisure to switch",
  from: leisure.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 10,
  protect: 80,
});
cable({ name: "switch to panel", from: off.load, to: panel.feed, lengthFt: 3, gauge: 10 });
cable({ name: "panel to minus", from: panel.negative, to: leisure.negative, lengthFt: 4, gauge: 10 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 14, gauge: 14, protect: 10 });
circuit({ name: "heater", from: panel.branch, load: 9, oneWayFt: 10, gauge: 16, protect: 15 });
circuit({ name: "lamps", from: panel.branch, load: 2, oneWayFt: 20, gauge: 18, protect: 5 });
