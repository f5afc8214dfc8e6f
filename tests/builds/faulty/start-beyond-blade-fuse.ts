import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A day boat: the macerator takes 180 A for a moment, behind a 40 A blade fuse.
// Expected: info protection/starting-current at macerator
// Because: ISO 8820-3, Type E: 0.2 to 7 s at 350 %, 0.04 to 1 s at 600 % (read in makers' sheets). 180 A is 450 %: an ordinary one
//   opens in about half a second, which is what such a motor takes to start; the plan states no time.
build({ name: "start beyond blade fuse", voltage: 12, insulationC: 105, installedIn: "boat" });

const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  internalMilliohm: 16,
  maxDischargeA: 400,
  maxChargeA: 30,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 0.5,
  gauge: 2,
  protect: { ratingA: 125, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 },
});
const macerator = motor({ name: "macerator", runningA: 25, startingA: 180, continuous: false });
circuit({
  name: "macerator feed",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: macerator,
  oneWayFt: 6,
  gauge: 8,
  protect: { ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 5 },
});
