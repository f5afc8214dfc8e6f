import {
  battery,
  build,
  cable,
  circuit,
  disconnect,
  fuseHolder,
  fusePanel,
  motor,
  shoreCharger,
} from "loomwright";

// A caravan by the metric: 2.5 mm² from front to back.
build({ name: "caravan", voltage: 12, insulationC: 70 });

const leisure = battery({
  name: "leisure",
  chemistry: "AGM",
  capacityAh: 95,
  internalMilliohm: 6,
  maxChargeA: 25,
});
const main = fuseHolder({ name: "main", ratingA: 50 });
const off = disconnect({ name: "switch", ratedA: 60 });
const panel = fusePanel({ name: "panel", positions: 8 });
cable({ name: "plus", from: leisure.positive, to: main.line, lengthM: 0.2, mm2: 6 });
cable({ name: "main to switch", from: main.load, to: off.line, lengthM: 0.5, mm2: 6 });
cable({ name: "switch to panel", from: off.load, to: panel.feed, lengthM: 5, mm2: 6 });
cable({ name: "minus", from: panel.negative, to: leisure.negative, lengthM: 5, mm2: 6 });
const mains = shoreCharger({ name: "charger", outputA: 20 });
cable({ name: "charger plus", from: mains.positive, to: off.load, lengthM: 2, mm2: 2.5 });
cable({ name: "charger minus", from: mains.negative, to: leisure.negative, lengthM: 2, mm2: 2.5 });
const mover = motor({ name: "water pump", runningA: 4, startingA: 15 });
circuit({ name: "pump", from: panel.branch, to: mover, oneWayM: 7, mm2: 1, protect: 5 });
circuit({ name: "heater blower", from: panel.branch, load: 5, oneWayM: 4, mm2: 1, protect: 10 });
circuit({ name: "lamps left", from: panel.branch, load: 2, oneWayM: 8, mm2: 0.75, protect: 5 });
circuit({ name: "lamps right", from: panel.branch, load: 2, oneWayM: 8, mm2: 0.75, protect: 5 });
circuit({ name: "fridge on the road", from: panel.branch, load: 14, oneWayM: 5, mm2: 2.5, protect: 20 });
