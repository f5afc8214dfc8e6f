import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// One lamp loses 15 mV more than its limit; everything else is in order.
build({ name: "just over", voltage: 12, insulationC: 105 });

const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
const off = disconnect({ name: "switch", ratedA: 200 });
const panel = fusePanel({ name: "panel", positions: 8 });
cable({
  name: "plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 3,
  gauge: 4,
  protect: { ratingA: 100, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 },
});
cable({ name: "feed", from: off.load, to: panel.feed, lengthFt: 12, gauge: 4 });
cable({ name: "return", from: panel.negative, to: bank.negative, lengthFt: 14, gauge: 4 });
circuit({ name: "heater", from: panel.branch, load: 15, oneWayFt: 8, gauge: 12, protect: 20 });
circuit({ name: "fridge", from: panel.branch, load: 6, oneWayFt: 10, gauge: 14, protect: 10 });
circuit({ name: "pump", from: panel.branch, load: 8, oneWayFt: 12, gauge: 12, protect: 15 });
circuit({
  name: "anchor lamp",
  from: panel.branch,
  load: 1.5,
  oneWayFt: 24,
  gauge: 14,
  protect: 5,
  critical: true,
});
