import { battery, build, cable, circuit, fusePanel, inverter } from "loomwright";

build({ name: "panel van" });
const house = battery({ chemistry: "LiFePO4", capacityAh: 200 });
const panel = fusePanel({ positions: 12, ratedA: 100 });
const kettle = inverter({ continuousW: 1500 });
cable({ name: "feed", from: house.positive, to: panel.feed, lengthFt: 6, gauge: 8 });
cable({ name: "back", from: panel.negative, to: house.negative, lengthFt: 6, gauge: 8 });
circuit({
  name: "inverter",
  from: house.positive,
  to: kettle,
  returnTo: house.negative,
  oneWayFt: 5,
  gauge: 2,
});
circuit({
  name: "fridge",
  from: panel.branch,
  load: 5,
  oneWayFt: 14,
  gauge: 16,
  protect: 10,
  critical: true,
});
circuit({
  name: "water pump",
  from: panel.branch,
  load: 7,
  oneWayFt: 10,
  gauge: 16,
  protect: 10,
  critical: true,
});
circuit({ name: "roof fan", from: panel.branch, load: 3, oneWayFt: 16, gauge: 18, protect: 5 });
circuit({ name: "lights", from: panel.branch, load: 2, oneWayFt: 20, gauge: 18, protect: 5 });
circuit({ name: "sockets", from: panel.branch, load: 12, oneWayFt: 12, gauge: 14, protect: 15 });
