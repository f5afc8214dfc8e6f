import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A log splitter: a 50 A battery switch for a 90 A motor.
// Expected: error disconnect/rating at main switch
// Because: Nameplate: 90 A through contacts rated 50 A.
build({ name: "small switch", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 50 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
const ram = motor({ name: "ram", runningA: 90, startingA: 120, continuous: false });
circuit({
  ...fromSwitch,
  name: "ram cable",
  to: ram,
  oneWayFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 125, distanceIn: 5 },
});
