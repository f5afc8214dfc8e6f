import { battery, build, circuit } from "loomwright";

build({ name: "day boat", ambientC: 40 });
const bank = battery({ chemistry: "flooded lead-acid", capacityAh: 80 });
circuit({
  name: "bilge pump",
  from: bank.positive,
  load: 8,
  oneWayFt: 12,
  gauge: 16,
  protect: 15,
  critical: true,
});
circuit({
  name: "plotter",
  from: bank.positive,
  load: 2,
  oneWayFt: 10,
  gauge: 18,
  protect: 3,
  critical: true,
  minimumV: 11.5,
});
circuit({ name: "trolling motor", from: bank.positive, load: 50, oneWayFt: 14, gauge: 8, protect: 60 });
circuit({ name: "live well", from: bank.positive, load: 5, oneWayFt: 18, gauge: 18 });
circuit({ name: "anchor light", from: bank.positive, load: 1, oneWayFt: 20, gauge: 18, protect: 2 });
