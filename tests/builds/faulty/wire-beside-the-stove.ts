import { battery, build, cable, circuit, disconnect } from "loomwright";

// A sauna van: a wire of 60 °C insulation beside the stove pipe, where it is 65 °C.
// Expected: error conductor/ambient at pipe fan
// Because: NFPA 70, 310.15(B)(1): no current is allowed when the ambient reaches the rating of the insulation.
build({ name: "wire beside the stove", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "pipe fan",
  load: 1,
  oneWayFt: 6,
  gauge: 14,
  insulationC: 60,
  ambientC: 65,
  protect: { ...classT, ratingA: 3, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
