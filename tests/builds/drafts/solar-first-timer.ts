import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A first draft of a van with solar: the controller's cables are the ones that came with it.
build({ name: "solar van", voltage: 12, installedIn: "vehicle", lowestC: -10 });
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 100 });
const roof = solarArray({
  name: "roof",
  openCircuitV: 24,
  shortCircuitA: 9,
  maxPowerV: 20,
  maxPowerA: 8.5,
  parallel: 2,
});
const controller = solarController({ name: "controller", maxInputV: 50, outputA: 30 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: controller,
  oneWayFt: 15,
  gauge: 14,
});
circuit({
  name: "charge pair",
  from: controller.positive,
  returnTo: controller.negative,
  to: bank,
  oneWayFt: 6,
  gauge: 12,
});
const off = disconnect({ name: "switch", ratedA: 60 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 8 });
circuit({
  name: "lights",
  from: off.load,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 14,
  gauge: 18,
  protect: 15,
});
circuit({
  name: "water pump",
  from: off.load,
  returnTo: bank.negative,
  load: 7,
  oneWayFt: 12,
  gauge: 18,
  protect: 15,
});
