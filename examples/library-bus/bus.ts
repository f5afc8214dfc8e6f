import { build, circuit } from "loomwright";
import { feeder, panel } from "./sizes.ts";
import "./reading-room.ts";

// A retired town bus that brings 2,000 books to villages: 12 V, LiFePO4 bank under the driver's floor,
// fuse panel behind the driver, reading room in the middle, desk and kitchenette at the back.
build({ name: "library bus", voltage: 12, insulationC: 105 });

// From the bank itself. The fuse stands next to the battery, so its distance is stated.
circuit({
  ...feeder,
  name: "panel feeder",
  load: 80,
  oneWayFt: 6,
  gauge: 2,
  protect: { ratingA: 100, family: "ISO 8820-5 Type SF 51", distanceIn: 8 },
});
circuit({
  ...feeder,
  name: "inverter",
  loadW: 1500,
  minimumV: 11,
  oneWayFt: 5,
  gauge: "1/0",
  protect: { ratingA: 175, family: "UL 248-15 Class T", distanceIn: 8 },
});
// The alternator can feed this one from the far end as well.
circuit({
  ...feeder,
  name: "charge from the engine",
  load: 50,
  oneWayFt: 18,
  gauge: "1/0",
  fedFromBothEnds: true,
  protect: { ratingA: 80, family: "ISO 8820-5 Type SF 51", distanceIn: 8 },
  protectFarEnd: { ratingA: 80, family: "ISO 8820-5 Type SF 51", distanceIn: 6 },
});

// Driver and vehicle side.
circuit({ ...panel, name: "radio", load: 4, oneWayFt: 6, gauge: 16, protect: 5 });
circuit({ ...panel, name: "reversing camera", load: 1, oneWayFt: 38, gauge: 16, protect: 3 });
circuit({
  ...panel,
  name: "entrance step",
  load: 12,
  continuous: false,
  oneWayFt: 10,
  gauge: 12,
  protect: 15,
});

// Kitchenette.
circuit({ ...panel, name: "refrigerator", load: 6, oneWayFt: 24, gauge: 10, protect: 10, minimumV: 10.8 });
circuit({ ...panel, name: "water pump", load: 7, oneWayFt: 26, gauge: 8, protect: 10, critical: true });
circuit({ ...panel, name: "extractor fan", load: 3, oneWayFt: 25, gauge: 14, protect: 5 });

// Safety.
circuit({
  ...panel,
  name: "gas and smoke alarm",
  load: 0.3,
  oneWayFt: 20,
  gauge: 16,
  protect: 3,
  critical: true,
});
circuit({
  ...panel,
  name: "emergency exit lights",
  load: 1.2,
  oneWayFt: 30,
  gauge: 12,
  protect: 3,
  critical: true,
});
