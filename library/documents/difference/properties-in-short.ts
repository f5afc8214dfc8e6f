import type { BehaviourInShort, Protection } from "../../model/run.ts";
import { formatExact, withUnit } from "../../rules/wording/format-number.ts";
import { type Property, stated, text } from "./property.ts";

/** The builder's statements on a device in a short; `in front`: the beginning of ids and words of a device in a conductor. */
export function propertiesInShort(
  { interruptingAtV, opening, letThroughA2s, withstandA2s, testedBehind }: BehaviourInShort,
  inFront: { readonly id: string; readonly words: string } = { id: "", words: "" },
): Property[] {
  const { id, words } = inFront;
  return [
    ...stated(`${id}interruptingAtV`, `${words}interrupting rating is stated for`, interruptingAtV, "V"),
    ...(opening ? [text(`${id}openingTimes`, `${words}opens`, openingInWords(opening))] : []),
    ...stated(`${id}letThroughA2s`, `${words}lets through`, letThroughA2s, "A²s"),
    ...stated(`${id}withstandA2s`, `${words}withstands`, withstandA2s, "A²s"),
    ...(testedBehind
      ? [
          text(
            `${id}testedBehind`,
            `${words}tested behind`,
            `${testedBehind.family}, up to ${withUnit(testedBehind.ratingA, "A")}: ${withUnit(testedBehind.interruptingA, "A")}`,
          ),
        ]
      : []),
  ];
}

function openingInWords({ gates }: NonNullable<Protection["opening"]>): string {
  const times = gates.map(({ percentOfRating, minS, maxS }) => {
    const within = maxS === null ? [] : [`within ${formatExact(maxS)} s`];
    const after = minS === null ? [] : [`after ${formatExact(minS)} s`];
    return `at ${formatExact(percentOfRating)} % ${[...after, ...within].join(" and ")}`;
  });
  return times.join("; ");
}
