import { alternator, battery, build, cable, circuit, disconnect, fusePanel, relay } from "loomwright";

/* A van of the plain kind: the relay connects the house bank with the engine's battery while the engine runs. */
build({ insulationC: 105 });
const fuse = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const start = battery({ name: "start battery", chemistry: "AGM", capacityAh: 95, internalMilliohm: 5 });
const house = battery({
  name: "house battery",
  chemistry: "AGM",
  capacityAh: 95,
  internalMilliohm: 5,
  maxChargeA: 95,
});
const engine = alternator({ ratedA: 70 });
cable({
  name: "alternator to start battery",
  from: start.positive,
  to: engine.positive,
  lengthM: 1,
  gauge: 2,
  protect: { ...fuse, ratingA: 100, distanceIn: 6 },
});
cable({ name: "alternator return", from: engine.negative, to: start.negative, lengthM: 1, gauge: 2 });

const charging = relay({ name: "charging relay", ratedA: 140 });
cable({
  name: "start battery to relay",
  from: start.positive,
  to: charging.line,
  lengthM: 1,
  gauge: 2,
  protect: { ...fuse, ratingA: 110, distanceIn: 6 },
});
cable({
  name: "relay to house battery",
  from: charging.load,
  to: house.positive,
  lengthM: 3,
  gauge: 2,
  protectFarEnd: { ...fuse, ratingA: 110, distanceIn: 6 },
});
cable({ name: "between the negatives", from: start.negative, to: house.negative, lengthM: 4, gauge: 2 });

const mainSwitch = disconnect({ name: "main disconnect", ratedA: 100 });
const panel = fusePanel({ positions: 6, ratedA: 100 });
cable({
  name: "house battery to disconnect",
  from: house.positive,
  to: mainSwitch.line,
  lengthM: 0.5,
  gauge: 4,
  protect: { ...fuse, ratingA: 60, distanceIn: 6 },
});
cable({ name: "disconnect to panel", from: mainSwitch.load, to: panel.feed, lengthM: 0.5, gauge: 4 });
cable({ name: "panel return", from: panel.negative, to: house.negative, lengthM: 1, gauge: 4 });
circuit({ name: "refrigerator", from: panel.branch, load: 5, oneWayM: 2, gauge: 12, protect: 7.5 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayM: 3, gauge: 14, protect: 5 });
