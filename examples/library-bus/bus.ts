import { build, circuit, period, scenario } from "loomwright";
import { open } from "./hours.ts";
import { hung } from "./layout.ts";
import { kettleInverter, panel } from "./power.ts";
import "./reading-room.ts";

// A retired town bus that brings 2,000 books to villages: 12 V, LiFePO4 bank under the driver's floor,
// fuse panel behind the driver, reading room in the middle, desk and kitchenette at the back.
// Negative conductors are yellow: the bus has mains on board for the shore charger, and its neutral is black.
// Many conductors share the trunking, and none of them may carry more than it can there.
build({
  name: "library bus",
  voltage: 12,
  installedIn: "vehicle",
  insulationC: 105,
  lowestC: -15,
  negativeColour: "yellow",
  bundledInChannels: true,
});

/** The vehicle's own devices run while it drives, an hour a day. */
const driving = { hoursPerDay: 1, daysOfWeek: open.daysOfWeek } as const;

/** What every run from the panel has in common: both conductors in one sheath, along the roof. */
const fromPanel = { from: panel.branch, sheathed: true } as const;

// Driver and vehicle side.
circuit({
  ...fromPanel,
  ...hung.radio,
  name: "radio",
  load: 4,
  gauge: 16,
  outsideMm: 7.5,
  protect: 5,
  use: driving,
});
circuit({
  ...fromPanel,
  ...hung.camera,
  name: "reversing camera",
  load: 1,
  gauge: 16,
  outsideMm: 7.5,
  protect: 3,
  use: driving,
});
circuit({
  ...fromPanel,
  ...hung.entranceStep,
  name: "entrance step",
  load: 12,
  continuous: false,
  gauge: 12,
  outsideMm: 9.5,
  protect: 15,
  use: { ...open, hoursPerDay: 0.1 },
});

// Kitchenette.
circuit({
  ...fromPanel,
  ...hung.refrigerator,
  name: "refrigerator",
  load: 6,
  gauge: 10,
  outsideMm: 11,
  protect: 10,
  minimumV: 10.8,
  use: { dutyPercent: 30 },
});
circuit({
  ...fromPanel,
  ...hung.waterPump,
  name: "water pump",
  load: 7,
  gauge: 6,
  outsideMm: 17,
  protect: 10,
  critical: true,
  use: { ...open, hoursPerDay: 0.3 },
});
circuit({
  ...fromPanel,
  ...hung.extractorFan,
  name: "extractor fan",
  load: 3,
  gauge: 14,
  outsideMm: 8.5,
  protect: 5,
  use: { ...open, hoursPerDay: 1 },
});

// Safety.
circuit({
  ...fromPanel,
  ...hung.alarm,
  name: "gas and smoke alarm",
  load: 0.3,
  gauge: 16,
  outsideMm: 7.5,
  protect: 3,
  critical: true,
  use: { dutyPercent: 100 },
});
circuit({
  ...fromPanel,
  ...hung.exitLights,
  name: "emergency exit lights",
  load: 1.2,
  gauge: 10,
  outsideMm: 11,
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
