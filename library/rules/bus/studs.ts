import { endsAt, mountedAt } from "../../analysis/network/topology/ends-at.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { atPart, relatedConductor, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

const oneStudEach = ownRequirement(
  "Each conductor on its own stud. Up to four on one stud is a practice of small craft and aircraft, recalled from memory.",
);

export const busStuds = defineRule<Values>({
  id: "bus/studs",
  title: "More conductors than studs on the bus bar",
  formerTitles: ["More conductors than the bus has studs"],
  severity: "warning",
  why: "Lugs stacked on one stud loosen each other, and the lower ones carry the heat of the upper ones.",
  sources: [oneStudEach],
  fixable: false,
  acceptable: true,
  // Needs only the network: the conductor ends on each bus, counted once for each wire. Silent if the plan states no studs.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      network.parts.flatMap((part) => {
        if (part.kind !== "busBar" || part.studs === undefined) return [];
        const ends = endsAt(network, part.terminals.stud);
        const mounted = mountedAt(network, part.terminals.stud);
        const wires = ends.reduce((sum, { run }) => sum + run.conductor.parallel, mounted.length);
        if (wires <= part.studs) return [];
        const values: Values = {
          wires,
          studs: part.studs,
          mounted: mounted.length,
          sideBySide: wires > ends.length + mounted.length,
          source: sourceInWords(oneStudEach),
        };
        // The last ones are those without a stud.
        const related = [
          ...ends.map((conductor) => relatedConductor(conductor)),
          ...mounted.map((device) => relatedPart(device)),
        ].slice(-mostRelated);
        return [{ subject: part.name, at: atPart(part, "studs"), values, related }];
      }),
    ),
  message({ wires, studs, mounted, sideBySide, source }) {
    const counted = sideBySide ? " (parallel wires counted individually)" : "";
    const what = mounted === 0 ? "conductors end" : "conductors and devices are";
    return `${wires} ${what} here${counted}, on ${studs} ${studs === 1 ? "stud" : "studs"}: use a bus bar with more, or share them between two (${source}).`;
  },
});

interface Values {
  readonly wires: number;
  readonly studs: number;
  /** Fuses and breakers that are mounted on it, among them. */
  readonly mounted: number;
  /** Some of them are parallel wires of one conductor. */
  readonly sideBySide: boolean;
  readonly source: string;
}

const mostRelated = 4;
