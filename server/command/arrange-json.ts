import * as z from "zod";
import type { SuggestedPlaces } from "../../library/documents/suggested-places.ts";
import { name, version } from "../../library/package.json";
import { ruleById } from "../../library/rules/registry.ts";

/** The JSON of `loomwright arrange`: lengths of parts in mm, of runs in m. Tests hold every answer to it. */
export const arrangeJsonSchema = z.strictObject({
  schemaVersion: z.literal(1),
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  plans: z.array(
    z.strictObject({
      file: z.string(),
      surface: z.string(),
      /** Why there are no places; null if there are. */
      why: z.string().nullable(),
      parts: z.array(
        z.strictObject({
          name: z.string(),
          surface: z.string(),
          leftMm: z.number(),
          topMm: z.number(),
          /** Clockwise. */
          turnedDeg: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
          /** The property to write. */
          at: z.string(),
        }),
      ),
      leftOut: z.array(
        z.strictObject({
          part: z.string(),
          because: z.enum(["no size", "cannot be mounted so", "mounted on another part"]),
        }),
      ),
      /** Parts on the surface for which no room was kept: they state no size. */
      withoutRoom: z.array(z.string()),
      /** All conductors of a run together, with slack; null if the length is not known. */
      runs: z.array(
        z.strictObject({
          name: z.string(),
          todayM: z.number().nullable(),
          suggestedM: z.number().nullable(),
        }),
      ),
      /** Of the runs with both lengths; null if there is none. */
      total: z
        .strictObject({
          runs: z.int(),
          todayM: z.number(),
          suggestedM: z.number(),
          todayCopperKg: z.number(),
          suggestedCopperKg: z.number(),
        })
        .nullable(),
      /** Information about the plan with these places that it has not today. No error and no warning is new. */
      newFindings: z.array(
        z.strictObject({
          rule: z.string(),
          severity: z.enum(["info", "warning", "error"]),
          message: z.string(),
        }),
      ),
    }),
  ),
});

type ArrangeJson = z.infer<typeof arrangeJsonSchema>;

/** Suggestions as text, ending in a line break. `at`: by the index of a place, the property to write. */
export function arrangeJson(
  plans: readonly {
    readonly file: string;
    readonly suggested: SuggestedPlaces;
    readonly at: readonly string[];
  }[],
): string {
  const report: ArrangeJson = {
    schemaVersion: 1,
    tool: { name, version },
    plans: plans.map(({ file, suggested, at }) => ({ file, ...planJson(suggested, at) })),
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}

function planJson(
  suggested: SuggestedPlaces,
  at: readonly string[],
): Omit<ArrangeJson["plans"][number], "file"> {
  const { surface, why = null, places, leftOut, withoutRoom, runs, total = null, added } = suggested;
  return {
    ...{ surface, why, leftOut: [...leftOut], withoutRoom: [...withoutRoom], total },
    parts: places.map(({ name, leftMm, topMm, turnedDeg }, index) => ({
      ...{ name, surface, leftMm, topMm, turnedDeg, at: at[index]! },
    })),
    runs: runs.map(({ name, todayM = null, suggestedM = null }) => ({ name, todayM, suggestedM })),
    newFindings: added.flatMap(({ rule, severity, values }) =>
      severity === "hint" ? [] : [{ rule, severity, message: ruleById(rule)!.message(values) }],
    ),
  };
}
