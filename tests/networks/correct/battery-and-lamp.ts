import { battery, build, circuit } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "AGM", capacityAh: 60, shortCircuitA: 1_500 });
circuit({
  name: "lamp",
  from: bank.positive,
  load: 3,
  oneWayFt: 8,
  gauge: 14,
  protect: { ratingA: 5, family: "circuit breaker", distanceIn: 7, interruptingA: 3_000 },
});
