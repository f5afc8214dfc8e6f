import { battery, build, cable, disconnect, starterMotor } from "loomwright";

// A racing skiff: a lithium battery for instruments cranks the engine, and its protection allows 100 A.
// Expected: warning battery/discharge-current at battery
// Because: Data sheet: 100 A at most; the starter draws 220 A, and the protection disconnects the battery while it cranks.
build({ name: "lithium cranks", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "LiFePO4",
  capacityAh: 60,
  internalMilliohm: 8,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const off = disconnect({ name: "battery switch", ratedA: 300 });
const starter = starterMotor({ name: "starter", crankingA: 220, minimumV: 8 });
cable({ name: "battery to switch", from: bank.positive, to: off.line, lengthFt: 2, gauge: 1 });
cable({ name: "switch to starter", from: off.load, to: starter.positive, lengthFt: 3, gauge: 1 });
cable({ name: "starter return", from: starter.negative, to: bank.negative, lengthFt: 4, gauge: 1 });
