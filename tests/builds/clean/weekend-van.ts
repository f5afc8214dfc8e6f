import { battery, build, cable, circuit, disconnect, fusePanel, load, motor } from "loomwright";

// A panel van for weekends: 12 V, one lithium battery under the bench, a blade-fuse panel beside the door.
build({ name: "weekend van", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 8,
  maxDischargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const panel = fusePanel({ name: "fuse panel", positions: 8, ratedA: 80, branchRatedA: 30 });

cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 1.5,
  gauge: 4,
  protect: { ratingA: 80, family: "UL 248-15 Class T", distanceIn: 5, interruptingA: 20_000, ratedV: 125 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 3, gauge: 4 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 4 });

const fridge = load({ name: "cool box", powerW: 55, minimumV: 10.4 });
circuit({ name: "cool box supply", from: panel.branch, to: fridge, oneWayFt: 8, gauge: 12, protect: 10 });
const tap = motor({ name: "water pump", runningA: 4, startingA: 9, continuous: false });
circuit({ name: "water pump supply", from: panel.branch, to: tap, oneWayFt: 11, gauge: 14, protect: 10 });
circuit({ name: "ceiling lamps", from: panel.branch, load: 2.5, oneWayFt: 14, gauge: 16, protect: 5 });
circuit({ name: "roof fan", from: panel.branch, load: 3, oneWayFt: 12, gauge: 14, protect: 5 });
circuit({ name: "phone sockets", from: panel.branch, load: 6, oneWayFt: 7, gauge: 14, protect: 10 });
