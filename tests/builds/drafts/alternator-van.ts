import { alternator, battery, build, cable, chassis, circuit, dcDcCharger, fusePanel } from "loomwright";

// Charging on the road: starter battery, converter, leisure battery; the frame as return.
build({ name: "road van", voltage: 12, installedIn: "vehicle" });

const frame = chassis({ name: "frame", milliohm: 1 });
const starter = battery({ name: "starter battery", chemistry: "flooded lead-acid", capacityAh: 90 });
const machine = alternator({ name: "alternator", ratedA: 140 });
cable({ name: "alternator lead", from: machine.positive, to: starter.positive, lengthFt: 6, gauge: 6 });
cable({ name: "alternator ground", from: machine.negative, to: frame.bond, lengthFt: 1, gauge: 6 });
cable({ name: "starter ground", from: starter.negative, to: frame.bond, lengthFt: 1, gauge: 2 });
const booster = dcDcCharger({ name: "booster", outputA: 50 });
cable({
  name: "booster input",
  from: starter.positive,
  to: booster.inputPositive,
  lengthFt: 18,
  gauge: 8,
  protect: 60,
});
cable({ name: "booster ground", from: booster.inputNegative, to: frame.bond, lengthFt: 2, gauge: 8 });
const bank = battery({
  name: "leisure battery",
  chemistry: "LiFePO4",
  capacityAh: 150,
  maxDischargeA: 150,
  maxChargeA: 100,
});
cable({ name: "booster output", from: booster.outputPositive, to: bank.positive, lengthFt: 4, gauge: 10 });
cable({ name: "leisure ground", from: bank.negative, to: frame.bond, lengthFt: 2, gauge: 8 });
const panel = fusePanel({ name: "panel", positions: 6 });
cable({ name: "panel feed", from: bank.positive, to: panel.feed, lengthFt: 5, gauge: 10, protect: 60 });
cable({ name: "panel ground", from: panel.negative, to: frame.bond, lengthFt: 2, gauge: 10 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 9, gauge: 16, protect: 15 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 15, gauge: 18, protect: 15 });
circuit({ name: "sockets", from: panel.branch, load: 10, oneWayFt: 12, gauge: 16, protect: 20 });
circuit({ name: "heater", from: panel.branch, load: 2, oneWayFt: 6, gauge: 18, protect: 15 });
