import { battery, build, cable, disconnect, starterMotor } from "loomwright";

// An old tractor: the battery moved behind the seat, and the old starter cable was lengthened with one of the same size.
// Expected: warning scenario/device-below-minimum at starter
// Because: Ohm's law: 300 A through 28 ft of 4 AWG and the battery leave less than the 9 V at which the starter cranks;
//          a warning, as the voltage at rest is estimated.
build({ name: "weak cranking", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 800,
});
const off = disconnect({ name: "battery switch", ratedA: 350 });
const starter = starterMotor({ name: "starter", crankingA: 300, minimumV: 9 });
cable({ name: "battery to switch", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4 });
cable({ name: "switch to starter", from: off.load, to: starter.positive, lengthFt: 12, gauge: 4 });
cable({ name: "starter return", from: starter.negative, to: bank.negative, lengthFt: 14, gauge: 4 });
