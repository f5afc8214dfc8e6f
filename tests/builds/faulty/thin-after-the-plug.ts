import { battery, build, cable, circuit, dcDcCharger, disconnect, part } from "loomwright";

// A tow car with a trailer: thick to the plug, thin behind it, and one fuse for both.
// Expected: error protection/unprotected-path at trailer lead
// Because: IEC 60364-4-43, 433.1 and 33 CFR 183.455: 60 A is above the 45 A of 12 AWG; the fuse protects the thinnest.
// May follow: error protection/return-conductor at trailer return
// May follow: warning charger/input-current at booster
// May follow: error conductor/ampacity at trailer lead
build({ name: "show trailer", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const tow = battery({
  name: "tow battery",
  chemistry: "AGM",
  capacityAh: 80,
  internalMilliohm: 4,
  maxDischargeA: 600,
  maxChargeA: 60,
});
const plug = part({
  name: "plug",
  terminals: ["carPlus", "carMinus", "trailerPlus", "trailerMinus"],
  ratedA: 60,
  joins: [
    { between: ["carPlus", "trailerPlus"], milliohm: 0.5 },
    { between: ["carMinus", "trailerMinus"], milliohm: 0.5 },
  ],
});
cable({
  name: "car lead",
  from: tow.positive,
  to: plug.carPlus,
  lengthFt: 12,
  gauge: 6,
  protect: classT(60),
});
cable({ name: "car return", from: plug.carMinus, to: tow.negative, lengthFt: 12, gauge: 6 });
const booster = dcDcCharger({
  name: "booster",
  outputA: 18,
  outputV: 14.4,
  inputMinV: 10.5,
  inputMaxA: 30,
  isolated: true,
});
cable({ name: "trailer lead", from: plug.trailerPlus, to: booster.inputPositive, lengthFt: 8, gauge: 12 });
cable({ name: "trailer return", from: booster.inputNegative, to: plug.trailerMinus, lengthFt: 8, gauge: 6 });
const bank = battery({
  name: "trailer bank",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 200,
  maxChargeA: 30,
});
const off = disconnect({ name: "switch", ratedA: 60 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 1, gauge: 8, protect: classT(40) });
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: off.load,
  lengthFt: 2,
  gauge: 10,
  protectFarEnd: classT(25),
});
cable({ name: "booster minus", from: booster.outputNegative, to: bank.negative, lengthFt: 2, gauge: 10 });
circuit({
  name: "stall lamps",
  from: off.load,
  returnTo: bank.negative,
  load: 4,
  oneWayFt: 10,
  gauge: 14,
  protect: classT(6),
});
