import { battery, build, cable, circuit, dcDcCharger, disconnect, fusePanel } from "loomwright";

// A metric camper: main fuse, switch, a panel of blade fuses, the booster from the vehicle's battery.
build({ name: "metric camper", voltage: 12, insulationC: 75, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 150,
  internalMilliohm: 6,
  maxDischargeA: 150,
  maxChargeA: 75,
});
const vehicle = battery({
  name: "vehicle battery",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 600,
  maxChargeA: 120,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const panel = fusePanel({
  name: "panel",
  positions: 10,
  ratedA: 100,
  branchRatedA: 30,
  branchFamily: "ISO 8820-3 Type C",
  testedBehind: { family: "UL 248-15 Class T", ratingA: 100, interruptingA: 10_000 },
});
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthM: 0.4, mm2: 25, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: panel.feed, lengthM: 0.6, mm2: 25 });
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthM: 0.8, mm2: 25 });
cable({ name: "vehicle minus", from: vehicle.negative, to: panel.negative, lengthM: 2, mm2: 25 });
const booster = dcDcCharger({ name: "booster", outputA: 30, outputV: 14.2, inputMinV: 11 });
cable({
  name: "booster feed",
  from: vehicle.positive,
  to: booster.inputPositive,
  lengthM: 3,
  mm2: 16,
  protect: classT(60),
});
cable({ name: "booster minus", from: booster.inputNegative, to: panel.negative, lengthM: 1, mm2: 16 });
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: panel.feed,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: classT(40),
});
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayM: 3, mm2: 4, protect: 10 });
circuit({ name: "pump", from: panel.branch, load: 4, continuous: false, oneWayM: 3, mm2: 2.5, protect: 7.5 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayM: 5, mm2: 2.5, protect: 5 });
