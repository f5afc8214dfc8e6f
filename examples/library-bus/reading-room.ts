import { type AwgSize, circuit } from "loomwright";
import { open } from "./hours.ts";
import { backRoom, conduitFrom, hung, readingRoom } from "./layout.ts";
import { panel } from "./power.ts";

const fromPanel = { from: panel.branch, sheathed: true } as const;

/** Rows of reading lamps: each lamp takes 0.4 A. Their box is under the ceiling. */
type LampRow = "shelfLampsLeft" | "shelfLampsRight" | "windowSeats" | "deskLamps";
function lamps(name: string, box: LampRow, count: number, gauge: AwgSize = 16) {
  return circuit({
    ...fromPanel,
    ...hung[box],
    name,
    load: count * 0.4,
    gauge,
    outsideMm: gauge === 16 ? 7.5 : 8.5,
    protect: 5,
    use: { ...open, hoursPerDay: 5 },
  });
}

lamps("shelf lamps, left", "shelfLampsLeft", 8, 14);
lamps("shelf lamps, right", "shelfLampsRight", 8, 14);
lamps("window seats", "windowSeats", 4);
lamps("desk lamps", "deskLamps", 3);

// One pair of USB sockets at each table, 6 A together, at the end of a conduit from the ceiling.
const tables = [
  { name: "front table", leftMm: 800 },
  { name: "middle table", leftMm: 2_200 },
  { name: "back table", leftMm: 3_300 },
];
for (const table of tables) {
  circuit({
    ...fromPanel,
    name: `sockets, ${table.name}`,
    load: 6,
    at: { endOf: conduitFrom(readingRoom, table.leftMm, `${table.name} conduit`) },
    gauge: 12,
    outsideMm: 9.5,
    protect: 10,
    use: { ...open, dutyPercent: 15 },
  });
}

circuit({
  ...fromPanel,
  name: "catalogue screen",
  load: 3.5,
  at: { endOf: conduitFrom(backRoom, 1_900, "desk conduit") },
  gauge: 10,
  outsideMm: 11,
  protect: 5,
  minimumV: 11,
  use: open,
});
circuit({
  ...fromPanel,
  name: "heater blower",
  load: 9,
  at: { endOf: conduitFrom(readingRoom, 1_600, "heater conduit") },
  gauge: 10,
  outsideMm: 11,
  protect: 15,
  use: { ...open, dutyPercentByMonth: [70, 60, 40, 20, 0, 0, 0, 0, 0, 20, 50, 70] },
});
