import * as z from "zod";
import { busBarSides } from "./allowed-values.ts";
import { termination, torque } from "./bench-properties.ts";
import { isObject } from "./describe-value.ts";
import { ofEveryPart, partTable, rating } from "./part-properties.ts";
import { amount, amountOrNone, count, notAList, oneOf, type Property, yesOrNo } from "./property.ts";
import type { ValuesOf } from "./property-table.ts";

/* Allowed values of each property of parts that only pass current on. */

const busBar = {
  ...ofEveryPart,
  ratedA: rating,
  studs: count({ from: 1, upTo: 200 }),
  side: oneOf(busBarSides, "is neither side of the system"),
};
export type BusBarValues = ValuesOf<typeof busBar>;
export const busBarProperties = partTable("busBar", busBar, { needed: [] });

const fusePanel = {
  ...ofEveryPart,
  positions: count({ from: 1, upTo: 200 }),
  ratedA: rating,
  branchRatedA: rating,
  negativeBus: yesOrNo(),
  branchTermination: termination,
  branchTorqueNm: torque,
};
export type FusePanelValues = ValuesOf<typeof fusePanel>;
export const fusePanelProperties = partTable("fusePanel", fusePanel, { needed: ["positions"] });

const disconnect = { ...ofEveryPart, ratedA: rating };
export type DisconnectValues = ValuesOf<typeof disconnect>;
export const disconnectProperties = partTable("disconnect", disconnect, { needed: ["ratedA"] });

const shunt = {
  ...ofEveryPart,
  // Both determine its resistance. Less than 1 A is not a shunt in a supply, and could be an ohm.
  ratedA: amount("a rating", "A", { from: 1, upTo: 10_000 }),
  // Commercial shunts drop 50 or 75 mV; 100 mV and 60 mV are known too.
  ratedMV: amount("a voltage", "mV", { from: 1, upTo: 1_000 }),
};
export type ShuntValues = ValuesOf<typeof shunt>;
export const shuntProperties = partTable("shunt", shunt, { needed: ["ratedA"] });

/**
 * Two ends without any resistance are one piece of metal. Below 1 µΩ, as of a few millimetres of busbar, they practically are.
 * Currents would then follow from voltage differences too small for floating-point accuracy.
 */
function resistanceOrNone(upTo: number): Property<number> {
  return amountOrNone("a resistance", "mΩ", { from: 0.001, upTo });
}

const chassis = { ...ofEveryPart, milliohm: resistanceOrNone(1_000) };
export type ChassisValues = ValuesOf<typeof chassis>;
export const chassisProperties = partTable("chassis", chassis, { needed: ["milliohm"] });

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

const part = { ...ofEveryPart, terminals: terminalNames, joins, ratedA: rating };
export type OtherPartValues = ValuesOf<typeof part>;
/** Allowed values of each property of `part`. */
export const otherPartProperties = partTable("part", part, { needed: ["terminals"] });
