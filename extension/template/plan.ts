import { build, circuit } from "loomwright";

// Values for the whole build. The temperature is printed on the insulation of your wire.
build({ voltage: 12, insulationC: 105 });

// From the battery to the fuse panel: thick, short, and protected close to the battery.
circuit({
  name: "feed of the fuse panel",
  load: 40,
  oneWayFt: 6,
  gauge: 4,
  critical: true,
  fromBattery: true,
  protect: { ratingA: 50, distanceIn: 7 },
});

// From the fuse panel to the loads. Put in your own loads and lengths; values that do not fit are underlined.
circuit({ name: "cool box", load: 5, oneWayFt: 14, gauge: 12, protect: 10 });
circuit({ name: "water pump", load: 6, oneWayFt: 9, gauge: 12, protect: 10, critical: true });
circuit({ name: "ceiling lights", load: 2, oneWayFt: 18, gauge: 16, protect: 5 });
circuit({ name: "sockets", load: 6, oneWayFt: 12, gauge: 14, protect: 10 });
