import type { PeriodEnergy } from "../../analysis/energy/energy-result.ts";
import type { Place } from "../../analysis/energy/places.ts";
import { placesSource } from "../../standards/world.ts";
import type { ProposedFix } from "../finding.ts";
import { defineRule, type Found } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";

export const energyPlace = defineRule<Values>({
  id: "energy/place",
  title: "Place of a period is not clear",
  severity: "error",
  why: "The sun and the cold of another place of the same name would decide whether the bank keeps up.",
  sources: [placesSource],
  fixable: true,
  acceptable: false,
  // Needs the places of each period. No choice is made in silence: a name that several places have is not judged.
  check: ({ energy }) =>
    energy.flatMap((one): Found<Values>[] => {
      const { period, climate, places, alike } = one;
      if (climate !== undefined || period.values.place === undefined) return [];
      return [
        {
          subject: period.name,
          at: { record: period.record, path: ["place"] },
          values: {
            place: period.values.place,
            candidates: (places.length > 0 ? places : alike).map(inWords),
            isKnown: places.length > 0,
          },
          fixes: fixesFor(one),
        },
      ];
    }),
  message({ place, candidates, isKnown }) {
    const shown = listInWords(candidates, mostShown);
    if (isKnown)
      return `${candidates.length} places are called "${place}": ${shown}. Write the country, or latitudeDeg and longitudeDeg.`;
    const like = candidates.length > 0 ? `, but ${shown}` : "";
    return `"${place}" is not among the known places of 15,000 inhabitants and more${like}. Write one nearby, or latitudeDeg and longitudeDeg.`;
  },
});

interface Values {
  readonly place: string;
  /** Places of that name; of an unknown one, those whose names begin alike. */
  readonly candidates: readonly string[];
  readonly isKnown: boolean;
}

const mostShown = 4;
const mostFixes = 4;

function inWords({ name, country, latitudeDeg, longitudeDeg }: Place): string {
  return `${name}, ${country} (${latitudeDeg}°, ${longitudeDeg}°)`;
}

/** The country, if it makes the name clear; else the degrees, which always do. */
function fixesFor({ period, places, alike }: PeriodEnergy): readonly ProposedFix[] {
  const { record } = period;
  const candidates = (places.length > 0 ? places : alike).slice(0, mostFixes);
  return candidates.map((place): ProposedFix => {
    const { name, country, latitudeDeg, longitudeDeg } = place;
    const sameName = (places.length > 0 ? places : alike).filter((other) => other.name === name);
    const isClear = sameName.filter((other) => other.country === country).length === 1;
    if (isClear)
      return {
        title: `Use ${name}, ${country}`,
        kind: "suggestion",
        changes: [{ do: "set", record, path: ["place"], value: `${name}, ${country}` }],
      };
    return {
      title: `Use ${inWords(place)} by its degrees`,
      kind: "suggestion",
      changes: [
        { do: "remove", record, path: ["place"] },
        { do: "set", record, path: ["latitudeDeg"], value: latitudeDeg },
        { do: "set", record, path: ["longitudeDeg"], value: longitudeDeg },
      ],
    };
  });
}
