import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A first draft of a camper: a 1,500 W inverter on the cables of its box.
build({ name: "box cables", voltage: 12, installedIn: "vehicle" });
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 150 });
const off = disconnect({ name: "switch", ratedA: 200 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: 150 });
circuit({
  name: "inverter cables",
  from: off.load,
  returnTo: bank.negative,
  to: inverter({ name: "inverter", continuousW: 1_500 }),
  oneWayFt: 5,
  gauge: 10,
  protect: 150,
});
circuit({
  name: "lamps",
  from: off.load,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 12,
  gauge: 16,
  protect: 20,
});
