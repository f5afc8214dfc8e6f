import { build, circuit, scenario } from "loomwright";
import { kettleInverter, panel } from "./power.ts";
import "./reading-room.ts";

// A retired town bus that brings 2,000 books to villages: 12 V, LiFePO4 bank under the driver's floor,
// fuse panel behind the driver, reading room in the middle, desk and kitchenette at the back.
// Negative conductors are yellow: the bus has mains on board for the shore charger, and its neutral is black.
build({ name: "library bus", voltage: 12, insulationC: 105, lowestC: -15, negativeColour: "yellow" });

/** What every run from the panel has in common: both conductors in one sheath, along the roof. */
const fromPanel = { from: panel.branch, sheathed: true } as const;

// Driver and vehicle side.
circuit({ ...fromPanel, name: "radio", load: 4, oneWayFt: 6, gauge: 16, protect: 5 });
circuit({ ...fromPanel, name: "reversing camera", load: 1, oneWayFt: 38, gauge: 16, protect: 3 });
circuit({
  ...fromPanel,
  name: "entrance step",
  load: 12,
  continuous: false,
  oneWayFt: 10,
  gauge: 12,
  protect: 15,
});

// Kitchenette.
circuit({
  ...fromPanel,
  name: "refrigerator",
  load: 6,
  oneWayFt: 24,
  gauge: 10,
  protect: 10,
  minimumV: 10.8,
});
circuit({ ...fromPanel, name: "water pump", load: 7, oneWayFt: 26, gauge: 6, protect: 10, critical: true });
circuit({ ...fromPanel, name: "extractor fan", load: 3, oneWayFt: 25, gauge: 14, protect: 5 });

// Safety.
circuit({
  ...fromPanel,
  name: "gas and smoke alarm",
  load: 0.3,
  oneWayFt: 20,
  gauge: 16,
  protect: 3,
  critical: true,
});
circuit({
  ...fromPanel,
  name: "emergency exit lights",
  load: 1.2,
  oneWayFt: 30,
  gauge: 10,
  protect: 3,
  critical: true,
});

// What is on at the same time. Conductors, fuses and voltages are judged by the worst of these.
scenario({ name: "opening hours, everything on" });
scenario({ name: "on the road", off: [kettleInverter], engine: true, sunPercent: 60 });
scenario({ name: "parked, charging from shore and sun", on: [], shore: true, sunPercent: 100 });
