import {
  alternator,
  battery,
  build,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  part,
} from "loomwright";

// A tow car and its horse trailer: a booster in the trailer, fed over a plug; metric.
build({ name: "horse trailer", voltage: 12, insulationC: 90, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 120 }) as const;
const tow = battery({
  name: "tow battery",
  chemistry: "flooded lead-acid",
  capacityAh: 72,
  shortCircuitA: 1800,
  maxDischargeA: 550,
  maxChargeA: 80,
});
const machine = alternator({ name: "alternator", ratedA: 120 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: tow.positive,
  lengthM: 1.2,
  mm2: 50,
  engineSpace: true,
  protectFarEnd: classT(150),
});
cable({
  name: "alternator minus",
  from: machine.negative,
  to: tow.negative,
  lengthM: 1.2,
  mm2: 50,
  engineSpace: true,
});
const plug = part({
  name: "trailer plug",
  ratedA: 60,
  terminals: ["carPlus", "carMinus", "plus", "minus"],
  joins: [
    { between: ["carPlus", "plus"], milliohm: 0.4 },
    { between: ["carMinus", "minus"], milliohm: 0.4 },
  ],
});
cable({ name: "car lead", from: tow.positive, to: plug.carPlus, lengthM: 5, mm2: 16, protect: classT(45) });
cable({ name: "car return", from: plug.carMinus, to: tow.negative, lengthM: 5, mm2: 16 });
const booster = dcDcCharger({ name: "booster", outputA: 20, outputV: 14.4, inputMinV: 10.5, isolated: true });
cable({ name: "trailer lead", from: plug.plus, to: booster.inputPositive, lengthM: 3, mm2: 16 });
cable({ name: "trailer return", from: booster.inputNegative, to: plug.minus, lengthM: 3, mm2: 16 });

const bank = battery({
  name: "trailer bank",
  chemistry: "AGM",
  capacityAh: 95,
  internalMilliohm: 5,
  maxDischargeA: 200,
  maxChargeA: 30,
});
const off = disconnect({ name: "trailer switch", ratedA: 100 });
const panel = fusePanel({
  name: "trailer panel",
  positions: 6,
  ratedA: 60,
  branchRatedA: 20,
  branchFamily: "ISO 8820-3 Type C",
});
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthM: 0.4, mm2: 16, protect: classT(50) });
cable({ name: "panel plus", from: off.load, to: panel.feed, lengthM: 0.6, mm2: 16 });
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthM: 0.8, mm2: 16 });
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: off.load,
  lengthM: 0.6,
  mm2: 10,
  protectFarEnd: classT(30),
});
cable({ name: "booster minus", from: booster.outputNegative, to: panel.negative, lengthM: 0.6, mm2: 10 });
circuit({ name: "stall lamps", from: panel.branch, load: 2, oneWayM: 5, mm2: 1.5, protect: 3 });
circuit({ name: "fans", from: panel.branch, load: 5, oneWayM: 4, mm2: 2.5, protect: 7.5 });
circuit({
  name: "water pump",
  from: panel.branch,
  load: 6,
  continuous: false,
  oneWayM: 4,
  mm2: 2.5,
  protect: 10,
});
