import { battery, build, cable, circuit, disconnect } from "loomwright";

// Every fuse where it was easy to reach.
build({ name: "camp", voltage: 12, insulationC: 105 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 90, shortCircuitA: 1900 });
const mainSwitch = disconnect({ name: "switch", ratedA: 100 });
cable({
  name: "plus",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 12,
  gauge: 6,
  protect: { ratingA: 80, distanceIn: 110 },
});
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 20,
  gauge: 16,
  protect: { ratingA: 5, distanceIn: 60 },
});
circuit({
  name: "pump",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 8,
  oneWayFt: 15,
  gauge: 14,
  protect: { ratingA: 15, distanceIn: 50 },
});
