import { battery, build, cable, circuit, fuseHolder, fusePanel, motor } from "loomwright";

// A skiff with a trolling motor straight on the battery and everything else on one blade panel.
build({ name: "skiff", voltage: 12 });

const cranking = battery({ name: "battery", chemistry: "flooded lead-acid", capacityAh: 90 });
const holder = fuseHolder({ name: "panel fuse", ratingA: 60 });
const panel = fusePanel({ name: "panel", positions: 6 });
cable({ name: "battery to fuse", from: cranking.positive, to: holder.line, lengthFt: 1, gauge: 10 });
cable({ name: "fuse to panel", from: holder.load, to: panel.feed, lengthFt: 9, gauge: 12 });
cable({ name: "panel minus", from: panel.negative, to: cranking.negative, lengthFt: 10, gauge: 14 });
const trolling = motor({ name: "trolling motor", runningA: 45, startingA: 80 });
circuit({
  name: "trolling wires",
  from: cranking.positive,
  returnTo: cranking.negative,
  to: trolling,
  oneWayFt: 14,
  gauge: 8,
  protect: { ratingA: 60, distanceIn: 20 },
});
circuit({
  name: "bilge pump",
  from: panel.branch,
  load: 6,
  oneWayFt: 12,
  gauge: 16,
  protect: 15,
  critical: true,
});
circuit({ name: "fish finder", from: panel.branch, load: 1, oneWayFt: 6, gauge: 18, protect: 10 });
circuit({
  name: "navigation lights",
  from: panel.branch,
  load: 2,
  oneWayFt: 15,
  gauge: 18,
  protect: 10,
  critical: true,
});
