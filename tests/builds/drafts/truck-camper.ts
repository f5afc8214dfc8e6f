import { battery, build, cable, chassis, circuit, fuseHolder, fusePanel } from "loomwright";

// Everything returns through the frame, over one thin strap.
build({ name: "truck camper", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 300,
  maxDischargeA: 250,
  internalMilliohm: 3,
});
const frame = chassis({ name: "frame", milliohm: 0.5 });
const main = fuseHolder({ name: "main", ratingA: 200 });
const panel = fusePanel({ name: "panel", positions: 8, negativeBus: false });
cable({ name: "bank to main", from: bank.positive, to: main.line, lengthFt: 1, gauge: 2 });
cable({ name: "main to panel", from: main.load, to: panel.feed, lengthFt: 10, gauge: 8 });
cable({ name: "strap", from: bank.negative, to: frame.bond, lengthFt: 2, gauge: 8 });
circuit({
  name: "air conditioner",
  from: main.load,
  returnTo: frame.bond,
  load: 60,
  oneWayFt: 12,
  gauge: 8,
  protect: 80,
});
circuit({
  name: "fridge",
  from: panel.branch,
  returnTo: frame.bond,
  load: 6,
  oneWayFt: 12,
  gauge: 16,
  protect: 15,
});
circuit({
  name: "lamps",
  from: panel.branch,
  returnTo: frame.bond,
  load: 4,
  oneWayFt: 24,
  gauge: 18,
  protect: 10,
});
