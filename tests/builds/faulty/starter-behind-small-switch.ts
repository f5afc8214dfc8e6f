import { battery, build, cable, disconnect, starterMotor } from "loomwright";

// A workboat: the engine is cranked with 260 A through a battery switch that is rated 100 A.
// Expected: warning disconnect/rating at engine switch
// Because: Common practice (no source): a battery switch carries what the starter motor takes by its rating for seconds, which makers
//   state at half as much again as that for hours or more; 260 A is 2.6 times it.
build({ name: "starter behind small switch", voltage: 12, insulationC: 105, installedIn: "boat" });

const start = battery({
  name: "start",
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 700,
  maxChargeA: 60,
});
const engineSwitch = disconnect({ name: "engine switch", ratedA: 100 });
const starter = starterMotor({ name: "starter", crankingA: 260, minimumV: 8 });
cable({ name: "plus", from: start.positive, to: engineSwitch.line, lengthFt: 2, gauge: "1/0" });
cable({ name: "crank", from: engineSwitch.load, to: starter.positive, lengthFt: 4, gauge: "1/0" });
cable({ name: "back", from: starter.negative, to: start.negative, lengthFt: 5, gauge: "1/0" });
