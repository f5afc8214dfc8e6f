import { build, circuit } from "loomwright";

// Fuses that no shop has.
build({ name: "trailer", voltage: 12, insulationC: 105 });

circuit({
  name: "pump",
  load: 9,
  oneWayFt: 6,
  gauge: 12,
  protect: { ratingA: 12, family: "ISO 8820-3 Type C" },
});
circuit({
  name: "fan",
  load: 3,
  oneWayFt: 9,
  gauge: 14,
  protect: { ratingA: 6, family: "ISO 8820-3 Type F" },
});
circuit({
  name: "winch",
  load: 70,
  continuous: false,
  oneWayFt: 7,
  gauge: 8,
  protect: { ratingA: 90, family: "ISO 8820-3 Type E" },
});
