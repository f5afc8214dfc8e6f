import { build, circuit } from "loomwright";

// A ranger's hut above the tree line: 24 V, solar on the roof, everything in metric conductors.
build({ name: "ranger's hut", voltage: 24, insulationC: 90 });

const lightSize = 1.5;

circuit({
  name: "panel feeder",
  load: 40,
  oneWayM: 2,
  mm2: 16,
  critical: true,
  fromBattery: true,
  protect: { ratingA: 50, family: "ISO 8820-5 Type SF 30", distanceMm: 250 },
});
circuit({
  name: "solar controller to battery",
  load: 30,
  oneWayM: 2.5,
  mm2: 10,
  critical: true,
  fromBattery: true,
  protect: { ratingA: 40, family: "ISO 8820-5 Type SF 30", distanceMm: 250 },
});
circuit({ name: "radio relay", loadW: 60, minimumV: 21, oneWayM: 6, mm2: 2.5, protect: 5, critical: true });
circuit({ name: "weather station", loadW: 5, oneWayM: 12, mm2: 1.5, protect: 2, critical: true });
circuit({ name: "water pump", load: 4, positiveM: 9, negativeM: 8, mm2: 4, protect: 5, critical: true });
circuit({ name: "cool box", load: 3, oneWayM: 5, mm2: 2.5, protect: 5 });
circuit({ name: "stove fan", load: 1.5, oneWayM: 4, mm2: lightSize, protect: 3 });

for (const room of ["bunk room", "day room", "entrance"]) {
  circuit({ name: `lights, ${room}`, load: 1, oneWayM: 8, mm2: lightSize, protect: 3 });
}
