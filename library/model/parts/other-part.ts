import * as z from "zod";
import { ofEveryPart, rating, resistanceOrNone } from "../part-properties.ts";
import { isObject } from "../plain-values.ts";
import { notAList } from "../property.ts";
import type { Property } from "../property-table.ts";
import type { Refusal } from "../run.ts";
import { definePart, type PartOf, type TerminalDescription } from "./define-part.ts";
import { input, neededInput, optional } from "./part-property.ts";

/** More terminals than any single device has. */
const mostTerminals = 100;
const longestTerminal = 40;

const terminalNames: Property<readonly string[]> = {
  schema: z
    .array(
      z
        .string({ error: "is not text" })
        .min(1, { error: "is empty" })
        .max(longestTerminal, { error: "is too long" }),
      { error: notAList },
    )
    .min(1, { error: "is empty" })
    .max(mostTerminals, { error: "is too long" }),
  allowed: `a list of up to ${mostTerminals} names, such as ["in", "out"], each up to ${longestTerminal} characters`,
  affectsResults: true,
};

const end = z.string({ error: "is not the name of a terminal" });
const milliohm = resistanceOrNone(1_000_000);

const joins: Property<readonly WrittenJoin[]> = {
  schema: z
    .array(
      z.strictObject(
        {
          between: z.tuple([end, end], { error: "is not a list of two terminals" }),
          milliohm: milliohm.schema.optional(),
        },
        {
          error: ({ input }) =>
            isObject(input) ? "has a property that a join does not have" : "is not an object",
        },
      ),
      { error: notAList },
    )
    // A connection between every two terminals is more than enough.
    .max(mostTerminals ** 2 / 2, { error: "is too long" }) as z.ZodType<readonly WrittenJoin[]>,
  allowed: `a list such as [{ between: ["in", "out"], milliohm: 2 }]; milliohm is ${milliohm.allowed}`,
  affectsResults: true,
};

/** A connection of two terminals inside a part, as the plan writes it. */
interface WrittenJoin {
  readonly between: readonly [string, string];
  readonly milliohm?: number | undefined;
}

const namedByThePlan: Readonly<Record<string, TerminalDescription>> = {};

/** A part with only its terminals and the connections inside it known. */
export const otherPart = definePart("part", {
  called: { word: "part", saidBy: /./ },
  role: "passes current on",
  terminals: namedByThePlan,
  // A plan may give two of its terminals these names.
  poles: { positive: "positive", negative: "negative" },
  opens: "unknown",
  sides: ({ terminals }) => terminals?.map((name) => [name, "either"]),
  properties: {
    terminals: neededInput(terminalNames),
    joins: input(joins),
    ratedA: optional(rating, {
      words: "rating",
      summary: true,
      limitOf: { current: "carries", words: "rating" },
    }),
  },
  figures: ({ joins = [] }, { at }): OtherPartFigures => ({
    joins: joins.map(({ between: [one, other], milliohm }) => ({
      between: [at(one), at(other)],
      ohm: (milliohm ?? 0) / 1_000,
    })),
  }),
  contradictions: (stated) => [...doubtfulNames(stated.terminals ?? []), ...unknownEnds(stated)],
});

export interface OtherPart extends PartOf<typeof otherPart> {}

interface OtherPartFigures {
  readonly joins: readonly Join[];
}

export interface Join {
  /** Indices in the network's terminals. */
  readonly between: readonly [number, number];
  /** 0: one piece of metal. */
  readonly ohm: number;
}

/** A terminal's name is written after its part, like the part's properties: `relay.in`, `relay.name`. */
function doubtfulNames(names: readonly string[]): Refusal[] {
  return names.flatMap((name, index) => {
    const wrong =
      names.indexOf(name) < index ? "appears twice" : taken.has(name) && "is a property of every part";
    if (!wrong) return [];
    const allowed = "a name of its own for each terminal";
    return [{ path: ["terminals", String(index)], given: JSON.stringify(name), wrong, allowed }];
  });
}

const taken: ReadonlySet<string> = new Set([
  ...Object.keys(ofEveryPart),
  ...["terminals", "joins", "ratedA"],
  ...["kind", "id", "__proto__"],
]);

function unknownEnds({
  terminals = [],
  joins = [],
}: {
  readonly terminals?: readonly string[] | undefined;
  readonly joins?: readonly WrittenJoin[] | undefined;
}): Refusal[] {
  const known = new Set(terminals);
  return joins.flatMap(({ between: [one, other] }, index) => {
    const path = (end: number) => ["joins", String(index), "between", String(end)];
    const allowed = terminals.map((name) => JSON.stringify(name)).join(", ");
    const unknown = [one, other].flatMap((name, end) =>
      known.has(name)
        ? []
        : [{ path: path(end), given: JSON.stringify(name), wrong: "is not one of its terminals", allowed }],
    );
    if (unknown.length === 0 && one === other)
      return [{ path: path(1), given: JSON.stringify(other), wrong: "is connected to itself", allowed }];
    return unknown;
  });
}
