import {
  battery,
  build,
  cable,
  circuit,
  disconnect,
  fusePanel,
  solarArray,
  solarController,
} from "loomwright";

// A first draft of a hut: the bank is in a shed 12 m away.
build({ name: "far bank hut", voltage: 24, installedIn: "building", lowestC: -10 });
const lower = battery({ name: "lower", chemistry: "AGM", nominalV: 12, capacityAh: 150 });
const upper = battery({ name: "upper", chemistry: "AGM", nominalV: 12, capacityAh: 150 });
cable({ name: "link", from: lower.positive, to: upper.negative, lengthM: 0.3, mm2: 6 });
const off = disconnect({ name: "switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 8, ratedA: 80 });
cable({ name: "plus", from: upper.positive, to: off.line, lengthM: 1, mm2: 6, protect: 60 });
cable({ name: "shed plus", from: off.load, to: panel.feed, lengthM: 12, mm2: 6 });
cable({ name: "shed minus", from: panel.negative, to: lower.negative, lengthM: 13, mm2: 6 });
circuit({ name: "lamps", from: panel.branch, load: 4, oneWayM: 8, mm2: 1.5, protect: 10 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayM: 6, mm2: 1.5, protect: 15 });
circuit({
  name: "well pump",
  from: panel.branch,
  load: 12,
  critical: true,
  oneWayM: 20,
  mm2: 2.5,
  protect: 16,
});
const roof = solarArray({
  name: "roof",
  openCircuitV: 38,
  shortCircuitA: 10,
  maxPowerV: 31,
  maxPowerA: 9.5,
  series: 2,
});
const tracker = solarController({ name: "tracker", maxInputV: 100, outputA: 30, outputV: 28.4 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayM: 8,
  mm2: 1.5,
});
cable({ name: "tracker plus", from: tracker.positive, to: panel.feed, lengthM: 2, mm2: 4 });
cable({ name: "tracker minus", from: tracker.negative, to: panel.negative, lengthM: 2, mm2: 4 });
