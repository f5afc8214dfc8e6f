import { battery, build, cable, circuit, fusePanel, solarArray, solarController } from "loomwright";

build({ name: "garden hut", voltage: 24 });
const bank = battery({ chemistry: "LiFePO4", capacityAh: 100, nominalV: 24 });
const modules = solarArray({ openCircuitV: 22, shortCircuitA: 10, maxPowerV: 18, maxPowerA: 9.4, series: 2 });
const controller = solarController({ outputA: 20, maxInputV: 100 });
const panel = fusePanel({ positions: 6 });
cable({ from: modules.positive, to: controller.solarPositive, lengthM: 10, mm2: 2.5 });
cable({ from: controller.solarNegative, to: modules.negative, lengthM: 10, mm2: 2.5 });
cable({ from: controller.positive, to: bank.positive, lengthM: 2, mm2: 4, protectFarEnd: 25 });
cable({ from: bank.negative, to: controller.negative, lengthM: 2, mm2: 4 });
cable({ name: "feed", from: bank.positive, to: panel.feed, lengthM: 4, mm2: 6, protect: 60 });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthM: 4, mm2: 6 });
circuit({ name: "pump", from: panel.branch, loadW: 180, oneWayM: 12, mm2: 2.5, protect: 15, critical: true });
circuit({ name: "lamps", from: panel.branch, loadW: 40, oneWayM: 15, mm2: 0.75, protect: 5 });
circuit({ name: "fridge", from: panel.branch, loadW: 70, oneWayM: 6, mm2: 1, protect: 5 });
