import * as z from "zod";
import { textOf } from "../../library/documents/difference/changed-properties.ts";
import {
  becameWorse,
  type ComparedPlan,
  type PlanSide,
} from "../../library/documents/difference/compared-plan.ts";
import type { Comparison } from "../../library/documents/difference/difference-markdown.ts";
import type { MonthFigures } from "../../library/documents/difference/energy-difference.ts";
import type { DiffFinding } from "../../library/documents/difference/findings.ts";
import type { Limit, Measured } from "../../library/documents/difference/measured.ts";
import {
  isSame,
  type PlanDifference,
  type StandingSubject,
} from "../../library/documents/difference/plan-difference.ts";
import type { Subject } from "../../library/documents/difference/subject.ts";
import { monthNames } from "../../library/model/use-properties.ts";
import { name as toolName, version } from "../../library/package.json";

const about = { kind: z.string(), name: z.string() };

const finding = z.strictObject({
  rule: z.string(),
  severity: z.enum(["error", "warning", "info", "hint"]),
  subject: z.string(),
  message: z.string(),
  accepted: z.string().optional(),
});

const limit = z.strictObject({ value: z.number(), is: z.enum(["most", "least"]) }).nullable();
const figure = { figure: z.string(), unit: z.string() };

const standing = z.strictObject({
  ...about,
  properties: z.array(z.strictObject({ property: z.string(), value: z.string() })),
  figures: z.array(z.strictObject({ ...figure, value: z.number(), limit })),
});

const side = z
  .discriminatedUnion("state", [
    z.strictObject({
      state: z.literal("evaluated"),
      circuits: z.int(),
      parts: z.int(),
      cables: z.int(),
      networkUnread: z.boolean(),
      findings: z.array(finding),
    }),
    z.strictObject({ state: z.literal("not-evaluated"), why: z.string() }),
  ])
  .nullable();

const monthSide = z
  .strictObject({
    verdict: z.enum(["not judged", "keeps up", "barely", "runs short", "not on average"]),
    /** As a share of a full charge. */
    lowestCharge: z.number(),
    hoursWithoutSupply: z.int(),
  })
  .nullable();

const file = { file: z.string(), movedFrom: z.string().optional(), becameWorse: z.boolean() };

/**
 * The shape of `loomwright diff --format json`. Stable: within a major version, properties are added, never renamed or removed.
 * Numbers are unrounded; files are relative to the compared folder, with forward slashes.
 */
export const jsonDifferenceSchema = z.strictObject({
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  before: z.string(),
  after: z.string(),
  notes: z.array(z.string()),
  plans: z.array(
    z.discriminatedUnion("state", [
      z.strictObject({
        ...file,
        state: z.literal("compared"),
        /** The build is unchanged, even if its text changed. */
        same: z.boolean(),
        added: z.array(standing),
        removed: z.array(standing),
        changed: z.array(
          z.strictObject({
            ...about,
            renamedFrom: z.string().optional(),
            properties: z.array(
              z.strictObject({ property: z.string(), before: z.string(), after: z.string() }),
            ),
          }),
        ),
        effects: z.array(
          z.strictObject({
            ...about,
            ...figure,
            before: z.number(),
            after: z.number(),
            limitBefore: limit,
            limitAfter: limit,
            crossed: z.enum(["past", "back"]).nullable(),
            /** True: the subject itself was changed; false: the effect is elsewhere. */
            own: z.boolean(),
          }),
        ),
        /**
         * Parts at another place, and channels with another course. null: on another surface, at the end of a channel, or of another
         * shape. `lengths`: runs whose length follows; of very many moves, only those that end there or lead through it.
         */
        moves: z.array(
          z.strictObject({ ...about, distanceMm: z.number().nullable(), lengths: z.int().min(0) }),
        ),
        /** Autonomy and months of each bank in each period, where they visibly differ. null: not there, or not known, on that side. */
        energy: z.array(
          z.strictObject({
            period: z.string(),
            bank: z.string(),
            /** In the month with the least, days. */
            autonomyDays: z.strictObject({ before: z.number().nullable(), after: z.number().nullable() }),
            months: z.array(
              z.strictObject({ month: z.enum(monthNames), before: monthSide, after: monthSide }),
            ),
          }),
        ),
        findings: z.strictObject({
          came: z.array(finding),
          went: z.array(finding),
          changed: z.array(z.strictObject({ before: finding, after: finding, worse: z.boolean() })),
        }),
        purchases: z.array(
          z.strictObject({
            what: z.string(),
            unit: z.enum(["pieces", "ft", "m"]),
            before: z.number(),
            after: z.number(),
          }),
        ),
        /** True: parts, cables and currents are not compared, because the network could not be read on that side. */
        networkUnread: z.strictObject({ before: z.boolean(), after: z.boolean() }),
        /** Names of scenarios without an operating point. */
        unsolved: z.strictObject({ before: z.array(z.string()), after: z.array(z.string()) }),
      }),
      z.strictObject({ ...file, state: z.literal("added"), after: side }),
      z.strictObject({ ...file, state: z.literal("removed"), before: side }),
      /** null: that side has no such plan. */
      z.strictObject({
        ...file,
        state: z.literal("not-evaluated"),
        /** Its texts are the same on both sides. */
        unchanged: z.boolean(),
        before: side,
        after: side,
      }),
    ]),
  ),
});

type JsonDifference = z.infer<typeof jsonDifferenceSchema>;
type JsonPlan = JsonDifference["plans"][number];

/** The comparison as text, ending in a line break. */
export function differenceJson({ before, after, notes, plans }: Comparison): string {
  const difference: JsonDifference = {
    tool: { name: toolName, version },
    ...{ before, after, notes: [...notes] },
    plans: plans.map(planJson),
  };
  return `${JSON.stringify(difference, null, 2)}\n`;
}

function planJson(plan: ComparedPlan): JsonPlan {
  const { path, movedFrom } = plan;
  const head = {
    file: path,
    ...(movedFrom === undefined ? {} : { movedFrom }),
    becameWorse: becameWorse(plan),
  };
  switch (plan.state) {
    case "compared":
      return { ...head, state: plan.state, ...differenceOf(plan.difference) };
    case "added":
      return { ...head, state: plan.state, after: sideJson(plan.side) };
    case "removed":
      return { ...head, state: plan.state, before: sideJson(plan.side) };
    case "not-evaluated":
      return {
        ...{ ...head, state: plan.state, unchanged: plan.unchanged },
        ...{ before: sideJson(plan.before), after: sideJson(plan.after) },
      };
  }
}

function differenceOf(difference: PlanDifference) {
  const { added, removed, changed, effects, moves, energy, findings, purchases } = difference;
  const { networkUnread, unsolved } = difference;
  return {
    same: isSame(difference),
    added: added.map(standingJson),
    removed: removed.map(standingJson),
    changed: changed.map(({ subject, renamedFrom, properties }) => ({
      ...named(subject),
      ...(renamedFrom === undefined ? {} : { renamedFrom }),
      properties: properties.map(({ id, before, after }) => ({ property: id, before, after })),
    })),
    effects: effects.map(({ subject, what, unit, before, after, limitBefore, limitAfter, crossed, own }) => ({
      ...named(subject),
      ...{ figure: what, unit, before, after, own, crossed: crossed ?? null },
      ...{ limitBefore: limitJson(limitBefore), limitAfter: limitJson(limitAfter) },
    })),
    moves: moves.map(({ subject, distanceMm, lengths }) => ({
      ...named(subject),
      ...{ distanceMm: distanceMm ?? null, lengths },
    })),
    energy: energy.map(({ period, bank, autonomyDays, months }) => ({
      ...{ period, bank },
      autonomyDays: { before: autonomyDays.before ?? null, after: autonomyDays.after ?? null },
      months: months.map(({ month, before, after }) => ({
        month: monthNames[month]!,
        ...{ before: monthJson(before), after: monthJson(after) },
      })),
    })),
    findings: {
      came: findings.came.map(findingJson),
      went: findings.went.map(findingJson),
      changed: findings.changed.map(({ before, after, worse }) => ({
        ...{ before: findingJson(before), after: findingJson(after), worse },
      })),
    },
    purchases: purchases.map((purchase) => ({ ...purchase })),
    networkUnread: { ...networkUnread },
    unsolved: { before: [...unsolved.before], after: [...unsolved.after] },
  };
}

function monthJson(figures: MonthFigures | undefined): z.infer<typeof monthSide> {
  if (!figures) return null;
  const { verdict, lowest, hoursWithoutSupply } = figures;
  return { verdict, lowestCharge: lowest, hoursWithoutSupply };
}

function named({ kind, name }: Subject) {
  return { kind, name };
}

function standingJson({ subject, measured }: StandingSubject) {
  return {
    ...named(subject),
    properties: subject.properties.map(({ id, value }) => ({
      property: id,
      value:
        value.as === "parts"
          ? value.parts.map((part) => subject.network?.parts[part]?.name ?? "").join(", ")
          : textOf(value),
    })),
    // A value that could not be computed is no figure, and JSON has no NaN.
    figures: measured
      .filter(({ value }) => Number.isFinite(value))
      .map(({ what, unit, value, limit: of }: Measured) => ({
        ...{ figure: what, unit, value, limit: limitJson(of) },
      })),
  };
}

function limitJson(of: Limit | undefined) {
  return of ? { value: of.value, is: of.is } : null;
}

function findingJson({ rule, severity, subject, message, accepted }: DiffFinding) {
  return { rule, severity, subject, message, ...(accepted === undefined ? {} : { accepted }) };
}

function sideJson(of: PlanSide | undefined): z.infer<typeof side> {
  if (!of) return null;
  return of.state === "evaluated" ? { ...of, findings: of.findings.map(findingJson) } : { ...of };
}
