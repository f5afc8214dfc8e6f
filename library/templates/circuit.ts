import { build, circuit } from "loomwright";

// Values for the whole build. The temperature is printed on the insulation of your wire.
build({ name: "my first circuit", voltage: 12, insulationC: 105 });

// A lamp, straight from a battery that other things feed too. Put in your own load and length: the hint behind the size shows the
// drop and the spare, and a value that does not fit is underlined.
circuit({
  name: "reading lamp",
  load: 2,
  oneWayFt: 12,
  gauge: 16,
  fromBattery: true,
  protect: { ratingA: 5, distanceIn: 6 },
});
