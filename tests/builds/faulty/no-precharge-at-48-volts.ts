import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A 48 V workshop: a 5,000 W inverter straight behind a plain switch.
// Expected: info inverter/precharge at inverter
// Because: Common practice: its capacitors draw hundreds of amperes as the switch closes, and pit the contacts.
build({ name: "no precharge at 48 volts", voltage: 48, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 48,
  capacityAh: 280,
  internalMilliohm: 8,
  maxDischargeA: 200,
  maxChargeA: 140,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
cable({
  name: "pack to switch",
  from: pack.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: { ...classT, ratingA: 200, distanceIn: 6 },
});
const shop = inverter({ name: "inverter", continuousW: 5000, efficiencyPercent: 93, cutOffV: 44 });
circuit({
  name: "inverter supply",
  from: mainSwitch.load,
  returnTo: pack.negative,
  to: shop,
  oneWayFt: 4,
  gauge: "1/0",
  protect: { ...classT, ratingA: 175, distanceIn: 5 },
});
