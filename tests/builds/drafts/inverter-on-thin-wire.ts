import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A 1,500 W inverter on the cable that came with the car stereo.
build({ name: "inverter on thin wire", voltage: 12 });

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
});
const mainSwitch = disconnect({ name: "switch", ratedA: 200 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 8,
  protect: { ratingA: 100, distanceIn: 10 },
});
const tools = inverter({ name: "inverter", continuousW: 1500, cutOffV: 11 });
circuit({
  name: "inverter cable",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: tools,
  oneWayFt: 12,
  gauge: 8,
  protect: 100,
});
