import { alternator, battery, build, cable, circuit, dcDcCharger, fusePanel } from "loomwright";

build({ name: "charging van" });
const starter = battery({ chemistry: "AGM", capacityAh: 70 });
const house = battery({ chemistry: "LiFePO4", capacityAh: 150 });
const generator = alternator({ ratedA: 120 });
const charger = dcDcCharger({ outputA: 30 });
const panel = fusePanel({ positions: 8 });
cable({ from: generator.positive, to: starter.positive, lengthM: 1.5, mm2: 25, protectFarEnd: 150 });
cable({ from: starter.negative, to: generator.negative, lengthM: 1.5, mm2: 25 });
cable({
  name: "to charger",
  from: starter.positive,
  to: charger.inputPositive,
  lengthM: 5,
  mm2: 6,
  protect: 50,
});
cable({ from: charger.inputNegative, to: starter.negative, lengthM: 5, mm2: 6 });
cable({ from: charger.outputPositive, to: house.positive, lengthM: 1, mm2: 6, protectFarEnd: 40 });
cable({ from: house.negative, to: charger.outputNegative, lengthM: 1, mm2: 6 });
cable({ name: "feed", from: house.positive, to: panel.feed, lengthM: 3, mm2: 10, protect: 60 });
cable({ name: "return", from: panel.negative, to: house.negative, lengthM: 3, mm2: 10 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayM: 4, mm2: 1.5, protect: 10 });
circuit({
  name: "heater fan",
  from: panel.branch,
  load: 8,
  oneWayM: 6,
  mm2: 1.5,
  protect: 10,
  critical: true,
});
circuit({ name: "lights", from: panel.branch, load: 2, oneWayM: 8, mm2: 0.75, protect: 5 });
