import { build, circuit } from "loomwright";

// A first draft of a small camper: the runs from the battery and the fuse panel to everything that draws current.
build({ name: "weekend camper", voltage: 12, insulationC: 105 });

circuit({ name: "cool box", load: 5, oneWayFt: 14, gauge: 12, protect: 10 });
circuit({ name: "water pump", load: 6, oneWayFt: 9, gauge: 12, protect: 10, critical: true });
circuit({ name: "ceiling lights", load: 2, oneWayFt: 18, gauge: 16, protect: 5 });
circuit({ name: "USB sockets", load: 6, oneWayFt: 12, gauge: 14, protect: 10 });
circuit({ name: "roof fan", load: 3, oneWayFt: 16, gauge: 16, protect: 5 });

circuit({ name: "cabin heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20 });

circuit({
  name: "inverter",
  loadW: 1000,
  minimumV: 11,
  oneWayFt: 4,
  gauge: 6,
  critical: true,
  fromBattery: true,
  protect: { ratingA: 150, family: "UL 248-15 Class T", distanceIn: 7 },
});

circuit({ name: "awning lights", load: 3, oneWayFt: 22, gauge: 14 });
