import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A refrigerator van: the inverter's surge pulls an old battery below its cut-off.
// Expected: warning inverter/surge at inverter or inverter supply
// Because: Nameplate: 1,600 W for a start are 150 A and more; 12 milliohms of battery and cable take over 2 V of 12 V, and it cuts off at 10.5 V.
build({ name: "surge pulls bank down", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 10,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const cold = inverter({
  name: "inverter",
  continuousW: 600,
  surgeW: 1600,
  efficiencyPercent: 90,
  cutOffV: 10.5,
});
circuit({
  name: "inverter supply",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: cold,
  oneWayFt: 5,
  gauge: 4,
  protect: { ...classT, ratingA: 90, distanceIn: 5 },
});
