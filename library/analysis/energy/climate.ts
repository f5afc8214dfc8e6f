import { type WorldTable, worldGrid, worldGridCode } from "../../standards/world.ts";

/** Monthly means of sun and air at a place. */
export interface Climate {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** By month: irradiation on the ground over that above the atmosphere. */
  readonly clearness: readonly number[];
  /** By month: mean temperature of the air, day and night, °C. */
  readonly airC: readonly number[];
  /** By month, of the plan's own: irradiation of a horizontal plane, kWh/m² a day. It replaces the clearness. */
  readonly irradiation?: readonly number[] | undefined;
}

/** The climate of any place on earth, from the table of the world. Latitude north positive, longitude east positive, degrees. */
export type ClimateTable = (latitudeDeg: number, longitudeDeg: number) => Climate;

/** Decodes the two grids, and interpolates between the centres of their cells. The same object for the same place. */
export function climateTable({ clearness, temperature }: WorldTable): ClimateTable {
  const clearnessBytes = clearness.map(bytesOf);
  const temperatureBytes = temperature.map(bytesOf);
  const known = new Map<string, Climate>();
  return (latitudeDeg, longitudeDeg) => {
    const key = `${latitudeDeg} ${longitudeDeg}`;
    const before = known.get(key);
    if (before) return before;
    if (known.size >= mostKept) known.clear();
    const at = placeInGrid(latitudeDeg, longitudeDeg);
    const climate: Climate = {
      latitudeDeg,
      longitudeDeg,
      clearness: at(clearnessBytes).map((unit) => unit * worldGridCode.clearnessPerUnit),
      airC: at(temperatureBytes).map((unit) => (unit - worldGridCode.zeroC) * worldGridCode.celsiusPerUnit),
    };
    known.set(key, climate);
    return climate;
  };
}

/** Places whose climates are kept: a lever along a coast passes many. */
const mostKept = 100;

function bytesOf(line: string): Uint8Array {
  return Uint8Array.from(atob(line), (letter) => letter.charCodeAt(0));
}

function placeInGrid(latitudeDeg: number, longitudeDeg: number) {
  const { rows, columns, stepDeg, southDeg, westDeg } = worldGrid;
  const y = Math.min(rows - 1, Math.max(0, (latitudeDeg - southDeg) / stepDeg));
  const x = (longitudeDeg - westDeg) / stepDeg;
  const [south, west] = [Math.min(rows - 2, Math.floor(y)), Math.floor(x)];
  const [up, right] = [y - south, x - west];
  const column = (index: number) => ((index % columns) + columns) % columns;
  return (lines: readonly Uint8Array[]): readonly number[] =>
    Array.from({ length: 12 }, (_, month) => {
      const along = (row: number) => {
        const line = lines[month * rows + row]!;
        return line[column(west)]! * (1 - right) + line[column(west + 1)]! * right;
      };
      return along(south) * (1 - up) + along(south + 1) * up;
    });
}
