import { groupedBy } from "../../analysis/grouped-by.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { atRecord } from "../wording/placement-in-words.ts";

const namedMeansUsed = ownRequirement(
  "A channel that through names is on the way of a conductor of its run.",
);

export const throughUnused = defineRule<Values>({
  id: "placement/through",
  title: "Named channel that the way leaves out",
  severity: "warning",
  why: "A builder who names a channel expects the conductor in it: the length on the list is that of another way.",
  sources: [namedMeansUsed],
  fixable: false,
  acceptable: true,
  // Needs the ways of the conductors. A channel on the way of one of the two conductors of a circuit is used.
  check({ placement }): Found<Values>[] {
    if (!placement) return [];
    const { layout, ways } = placement;
    const naming = layout.leads.filter(({ through }) => through && through.length > 0);
    return [...groupedBy(naming, ({ record }) => record).values()].flatMap((leads): Found<Values>[] => {
      const found = leads.flatMap(({ index }) => {
        const way = ways[index]!;
        return way.state === "found" ? [way] : [];
      });
      if (found.length < leads.length) return [];
      const used = new Set(found.flatMap(({ stretches }) => stretches.map(({ channel }) => channel)));
      const [{ through = [], name, record }] = leads as [(typeof leads)[number]];
      const unused = [...new Set(through)].filter((channel) => !used.has(channel));
      if (unused.length === 0) return [];
      const channels = unused.map((channel) => layout.channels[channel]!);
      return [
        {
          subject: name,
          at: atRecord({ record }, "through"),
          values: { channels: channels.map((channel) => channel.name) },
          related: channels.map((channel) => ({ at: atRecord(channel), text: channel.name })),
        },
      ];
    });
  },
  message: ({ channels }) =>
    `The way does not use ${listInWords(channels)}: a shorter one through the other channels that are named, or in the open, avoids ${channels.length === 1 ? "it" : "them"}. Take ${channels.length === 1 ? "it" : "them"} out, or name the channels that lead there.`,
});

interface Values {
  readonly channels: readonly string[];
}
