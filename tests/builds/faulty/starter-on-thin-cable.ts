import { battery, build, cable, disconnect, starterMotor } from "loomwright";

// A launch: the starter at the end of 24 ft of 4 AWG.
// Expected: warning scenario/device-below-minimum at starter
// Because: The maker's figure: 260 A lose 1.8 V over 26 ft of 4 AWG at 30 °C and 1 V in the battery; of 12 V, 9.5 V do not arrive.
build({ name: "starter on thin cable", voltage: 12, insulationC: 105 });
const start = battery({
  name: "start",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 4,
  maxDischargeA: 800,
});
const off = disconnect({ name: "engine switch", ratedA: 300 });
const starter = starterMotor({ name: "starter", crankingA: 260, minimumV: 9.5 });
cable({ name: "plus", from: start.positive, to: off.line, lengthFt: 2, gauge: 4 });
cable({ name: "crank", from: off.load, to: starter.positive, lengthFt: 12, gauge: 4 });
cable({ name: "back", from: starter.negative, to: start.negative, lengthFt: 12, gauge: 4 });
