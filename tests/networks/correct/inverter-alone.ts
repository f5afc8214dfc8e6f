import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "LiFePO4", capacityAh: 280, internalMilliohm: 2, maxDischargeA: 200 });
const off = disconnect({ ratedA: 200 });
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthFt: 1,
  gauge: "2/0",
  protect: { ratingA: 175, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
const kettle = inverter({ continuousW: 1_000, surgeW: 2_000, cutOffV: 11 });
circuit({
  name: "inverter supply",
  from: off.load,
  returnTo: bank.negative,
  to: kettle,
  oneWayFt: 3,
  gauge: "2/0",
});
