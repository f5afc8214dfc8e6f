import { type AwgSize, circuit } from "loomwright";
import { open } from "./hours.ts";
import { panel } from "./power.ts";

const fromPanel = { from: panel.branch, sheathed: true } as const;

/** A row of reading lamps: each takes 0.4 A. */
function lamps(name: string, count: number, oneWayFt: number, gauge: AwgSize = 16) {
  return circuit({
    ...fromPanel,
    name,
    load: count * 0.4,
    oneWayFt,
    gauge,
    protect: 5,
    use: { ...open, hoursPerDay: 5 },
  });
}

lamps("shelf lamps, left", 8, 22, 14);
lamps("shelf lamps, right", 8, 24, 14);
lamps("window seats", 4, 28);
lamps("desk lamps", 3, 34);

// One pair of USB sockets at each table, 6 A together.
const tables = [
  { name: "front table", oneWayFt: 14 },
  { name: "middle table", oneWayFt: 20 },
  { name: "back table", oneWayFt: 27 },
];
for (const table of tables) {
  circuit({
    ...fromPanel,
    name: `sockets, ${table.name}`,
    load: 6,
    oneWayFt: table.oneWayFt,
    gauge: 12,
    protect: 10,
    use: { ...open, dutyPercent: 15 },
  });
}

circuit({
  ...fromPanel,
  name: "catalogue screen",
  load: 3.5,
  oneWayFt: 30,
  gauge: 10,
  protect: 5,
  minimumV: 11,
  use: open,
});
circuit({
  ...fromPanel,
  name: "heater blower",
  load: 9,
  oneWayFt: 16,
  gauge: 10,
  protect: 15,
  use: { ...open, dutyPercentByMonth: [70, 60, 40, 20, 0, 0, 0, 0, 0, 20, 50, 70] },
});
