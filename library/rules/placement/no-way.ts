import { missingWays } from "../../analysis/placement/missing-ways.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { atRecord, bodyInWords, relatedBody } from "../wording/placement-in-words.ts";

const wayNeeded = ownRequirement("A conductor between two placed parts lies along surfaces and in channels.");

export const noWayForConductor = defineRule<Values>({
  id: "placement/no-way",
  title: "No way for a conductor",
  severity: "error",
  why: "A conductor that has no way can be neither laid nor measured: its length, its drop and its size are guesses.",
  sources: [wayNeeded],
  fixable: false,
  acceptable: true,
  // Needs the ways of the conductors. The conductors of a circuit are one finding.
  check({ placement }): Found<Values>[] {
    if (!placement) return [];
    const { layout } = placement;
    const found = new Map<number, Found<Values>>();
    for (const { lead: index, surfaces } of missingWays(placement)) {
      const lead = layout.leads[index]!;
      const ends = [lead.from, lead.to].map(({ body }) => layout.bodies[body]!);
      if (found.has(lead.record)) continue;
      found.set(lead.record, {
        subject: lead.name,
        at: atRecord(lead, ...(lead.through ? ["through"] : [])),
        values: {
          parts: ends.map(bodyInWords) as [string, string],
          named: lead.through?.map((channel) => layout.channels[channel]!.name),
          surfaces: surfaces?.map((group) => group.map((surface) => layout.surfaces[surface]!.name)),
        },
        related: ends.map(relatedBody),
      });
    }
    return [...found.values()];
  },
  message({ parts: [from, to], named, surfaces }) {
    const between = `from ${from} to ${to}`;
    const [start = [], end = []] = surfaces ?? [];
    if (surfaces)
      return `No way leads ${between}: no channel connects ${listInWords(start, 3)} with ${listInWords(end, 3)}. Add one between these surfaces.`;
    if (named?.length === 0)
      return `No way leads ${between} in the open, as through: [] demands: name channels there, or leave it out.`;
    if (named)
      return `No way leads ${between} through ${listInWords(named)}: name every channel on the way, or leave through out.`;
    return `No way leads ${between}: parts and places kept free block all of them. Move one, or add a channel.`;
  },
});

interface Values {
  readonly parts: readonly [string, string];
  /** The channels that the plan names; absent if it names none. */
  readonly named: readonly string[] | undefined;
  /** The surfaces at each end that channels connect with one another; absent if those of both ends are connected. */
  readonly surfaces: readonly (readonly string[])[] | undefined;
}
