import { build, circuit, period, scenario } from "loomwright";
import { open } from "./hours.ts";
import { kettleInverter, panel } from "./power.ts";
import "./reading-room.ts";

// A retired town bus that brings 2,000 books to villages: 12 V, LiFePO4 bank under the driver's floor,
// fuse panel behind the driver, reading room in the middle, desk and kitchenette at the back.
// Negative conductors are yellow: the bus has mains on board for the shore charger, and its neutral is black.
build({ name: "library bus", voltage: 12, insulationC: 105, lowestC: -15, negativeColour: "yellow" });

/** The vehicle's own devices run while it drives, an hour a day. */
const driving = { hoursPerDay: 1, daysOfWeek: open.daysOfWeek } as const;

/** What every run from the panel has in common: both conductors in one sheath, along the roof. */
const fromPanel = { from: panel.branch, sheathed: true } as const;

// Driver and vehicle side.
circuit({ ...fromPanel, name: "radio", load: 4, oneWayFt: 6, gauge: 16, protect: 5, use: driving });
circuit({
  ...fromPanel,
  name: "reversing camera",
  load: 1,
  oneWayFt: 38,
  gauge: 16,
  protect: 3,
  use: driving,
});
circuit({
  ...fromPanel,
  name: "entrance step",
  load: 12,
  continuous: false,
  oneWayFt: 10,
  gauge: 12,
  protect: 15,
  use: { ...open, hoursPerDay: 0.1 },
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
  use: { dutyPercent: 30 },
});
circuit({
  ...fromPanel,
  name: "water pump",
  load: 7,
  oneWayFt: 26,
  gauge: 6,
  protect: 10,
  critical: true,
  use: { ...open, hoursPerDay: 0.3 },
});
circuit({
  ...fromPanel,
  name: "extractor fan",
  load: 3,
  oneWayFt: 25,
  gauge: 14,
  protect: 5,
  use: { ...open, hoursPerDay: 1 },
});

// Safety.
circuit({
  ...fromPanel,
  name: "gas and smoke alarm",
  load: 0.3,
  oneWayFt: 20,
  gauge: 16,
  protect: 3,
  critical: true,
  use: { dutyPercent: 100 },
});
circuit({
  ...fromPanel,
  name: "emergency exit lights",
  load: 1.2,
  oneWayFt: 30,
  gauge: 10,
  protect: 3,
  critical: true,
  use: { hoursPerDay: 0 },
});

// What is on at the same time. Conductors, fuses and voltages are judged by the worst of these.
scenario({ name: "opening hours, everything on" });
scenario({ name: "on the road", off: [kettleInverter], engine: true, sunPercent: 60 });
scenario({ name: "parked, charging from shore and sun", on: [], shore: true, sunPercent: 100 });

// All year on the road on weekdays, an hour of driving a day, and at night on the depot's shore power.
period({
  name: "all year",
  place: "Sevilla, ES",
  driving,
  shore: { fromHour: 20, untilHour: 6 },
  bankHeated: true,
});
// Summer camps far from any socket.
period({ name: "summer camps", place: "Sevilla, ES", fromDay: "1 Jul", untilDay: "31 Aug", driving });
