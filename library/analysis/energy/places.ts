import type { WorldTable } from "../../standards/world.ts";

/** A place of the table of the world. */
export interface Place {
  readonly name: string;
  readonly country: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** Places by name: those that a text may mean. One: it is found; several: it is not clear; none: it is not known. */
export interface PlaceTable {
  /** @param text A name, with the country in two letters behind a comma, or without it. */
  find(text: string): readonly Place[];
  /** Names that begin alike, for a name that is not known: those of the stated country first, the most alike before the others. */
  like(text: string): readonly Place[];
  /**
   * Names that begin with a text, with a country or its beginning behind a comma or without it: the shortest first, at most so many. The
   * places of one name in one country are together.
   */
  beginning(text: string, most: number): readonly (readonly [Place, ...Place[]])[];
}

/** Accents and capitals do not count: "koln" finds Köln. */
export function placeTable({ places }: WorldTable): PlaceTable {
  const byName = new Map<string, Place[]>();
  for (const [country, rows] of Object.entries(places))
    for (const row of rows) {
      const [name = "", latitude, longitude] = row.split("|");
      const place = { name, country, latitudeDeg: Number(latitude), longitudeDeg: Number(longitude) };
      const key = folded(name);
      const there = byName.get(key);
      if (there) there.push(place);
      else byName.set(key, [place]);
    }
  const inCountry = (text: string) => {
    const [, name = text, country] = /^(.*),\s*([A-Za-z]{2})\s*$/.exec(text) ?? [];
    return {
      key: folded(name),
      isThere: (place: Place) => !country || place.country === country.toUpperCase(),
    };
  };
  /** Each keystroke in a plan asks for the same place. */
  let lastFound: { readonly text: string; readonly places: readonly Place[] } | undefined;
  return {
    find(text) {
      if (text !== lastFound?.text) {
        const { key, isThere } = inCountry(text);
        lastFound = { text, places: (byName.get(key) ?? []).filter(isThere) };
      }
      return lastFound.places;
    },
    like(text) {
      const { key, isThere } = inCountry(text);
      if (key.length < fewestLetters) return [];
      const inThis = text.includes(",");
      const alike = [...byName].flatMap(([name, there]) => {
        const letters = sameLetters(name, key);
        return letters < 2
          ? []
          : there.map((place) => ({ place, letters, isThere: inThis && isThere(place) }));
      });
      const near = alike.filter(({ letters }) => letters >= Math.max(fewestLetters, key.length - 2));
      // Without one in the country that is stated, the nearest names there are offered before those of other countries.
      const inCountryOnly = near.some((one) => one.isThere) ? [] : alike.filter((one) => one.isThere);
      return [...new Set([...inCountryOnly, ...near])]
        .sort((one, other) => Number(other.isThere) - Number(one.isThere) || other.letters - one.letters)
        .slice(0, mostAlike)
        .map(({ place }) => place);
    },
    beginning(text, most) {
      const [name = "", country = ""] = text.split(",");
      const [key, of] = [folded(name), country.trim().toUpperCase()];
      const isExact = text.includes(",");
      return [...byName]
        .filter(([other]) => (isExact ? other === key : other.startsWith(key)))
        .sort(([one], [other]) => one.length - other.length || (one < other ? -1 : 1))
        .flatMap(([, places]) => byCountry(places.filter((place) => place.country.startsWith(of))))
        .slice(0, most);
    },
  };
}

/** The places of one name, by country. */
function byCountry(places: readonly Place[]): (readonly [Place, ...Place[]])[] {
  const countries = new Map<string, [Place, ...Place[]]>();
  for (const place of places) {
    const there = countries.get(place.country);
    if (there) there.push(place);
    else countries.set(place.country, [place]);
  }
  return [...countries.values()];
}

const fewestLetters = 3;
const mostAlike = 8;

/** The number of letters with which both begin. */
function sameLetters(one: string, other: string): number {
  let letters = 0;
  while (letters < one.length && one[letters] === other[letters]) letters++;
  return letters;
}

function folded(name: string): string {
  return name
    .normalize("NFD")
    .replaceAll(/\p{Diacritic}/gu, "")
    .toLowerCase()
    .trim();
}
