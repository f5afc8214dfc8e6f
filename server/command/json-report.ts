import * as z from "zod";
import { name, version } from "../../library/package.json";
import { mayHideHazard, passedByReasons } from "../evaluate/files/passed-by.ts";
import type { CheckedPlans } from "./check-result.ts";
import type { Lines } from "./reported-lines.ts";
import type { ReportedNetwork } from "./reported-network.ts";
import { notJudgedReasons, type Reported, type ReportedFinding } from "./reported-plan.ts";
import { shardSchema } from "./shard.ts";

const lines = {
  file: z.string(),
  line: z.int().min(1),
  column: z.int().min(1),
  endLine: z.int().min(1),
  endColumn: z.int().min(1),
};

const size = z.strictObject({
  awg: z.union([z.number(), z.string()]).optional(),
  mm2: z.number().optional(),
  parallel: z.int().min(2).optional(),
});

const at = { file: z.string(), line: z.int().min(1) };

/** A scenario is identified by its index in the network's list. */
const scenario = z.int().min(0);
const worst = z.strictObject({ currentA: z.number(), scenario }).nullable();
const terminal = z.strictObject({ part: z.string(), terminal: z.string() });

const solvedNetwork = z.strictObject({
  judged: z.literal(true),
  /** How many parts and cables the plan contains. */
  contents: z.strictObject({ parts: z.int().min(0), cables: z.int().min(0) }),
  summary: z.strictObject({
    scenarios: z.int().min(0),
    unsolved: z.array(z.strictObject({ scenario: z.string(), why: z.enum(["collapse", "not-converged"]) })),
    /** The conductor nearest to its ampacity, or furthest above it. */
    hardest: z
      .strictObject({
        name: z.string(),
        role: z.enum(["cable", "positive", "return"]),
        currentA: z.number(),
        ampacityA: z.number(),
        scenario: z.string(),
      })
      .nullable(),
    /** The device that gets the smallest share of its nominal voltage. */
    lowest: z.strictObject({ name: z.string(), voltageV: z.number(), scenario: z.string() }).nullable(),
  }),
  scenarios: z.array(
    z.discriminatedUnion("state", [
      z.strictObject({
        name: z.string(),
        file: z.string().optional(),
        line: z.int().min(1).optional(),
        state: z.literal("solved"),
        residualA: z.number(),
        largestA: z.number(),
      }),
      z.strictObject({
        name: z.string(),
        file: z.string().optional(),
        line: z.int().min(1).optional(),
        state: z.literal("unsolved"),
        why: z.enum(["collapse", "not-converged"]),
        reachedShare: z.number(),
        culprits: z.array(z.string()),
      }),
    ]),
  ),
  parts: z.array(
    z.strictObject({
      kind: z.string(),
      name: z.string(),
      ...at,
      source: z.string().optional(),
      feeds: worst,
      draws: worst,
      surge: worst,
      lowest: z.strictObject({ voltageV: z.number(), scenario }).nullable(),
      results: z.array(
        z.strictObject({
          scenario,
          currentA: z.number(),
          inputA: z.number(),
          voltageV: z.number().nullable(),
        }),
      ),
    }),
  ),
  conductors: z.array(
    z.strictObject({
      name: z.string(),
      role: z.enum(["cable", "positive", "return"]),
      ...at,
      from: terminal,
      to: terminal,
      lengthM: z.number(),
      conductor: size,
      ampacityA: z.number().nullable(),
      worst,
      results: z.array(
        z.strictObject({ scenario, currentA: z.number(), conductorC: z.number(), dropV: z.number() }),
      ),
      deadShort: z.strictObject({ greatestA: z.number().nullable(), estimated: z.boolean() }),
      devices: z.array(
        z.strictObject({
          end: z.enum(["near", "far"]),
          ratingA: z.number(),
          interruptingA: z.number().nullable(),
          greatestA: z.number(),
          leastA: z.number().nullable(),
          estimated: z.boolean(),
        }),
      ),
    }),
  ),
  waysFromBank: z.array(
    z.strictObject({
      part: z.string(),
      battery: z.string(),
      scenario,
      dropV: z.number(),
      dropPercent: z.number(),
      dropLimitPercent: z.number(),
      arrivingV: z.number(),
    }),
  ),
});

/** One plan of the report. */
export const planSchema = z.strictObject({
  file: z.string(),
  /** false: the plan has no results, because it could not be read or run; its findings state why. */
  evaluated: z.boolean(),
  /** null: it was judged to its end. Otherwise its figures and findings, if any, cover the part before it stopped. */
  notJudged: z.strictObject({ reason: z.enum(notJudgedReasons), message: z.string() }).nullable(),
  circuits: z.array(
    z.strictObject({
      name: z.string(),
      ...at,
      loadA: z.number(),
      systemV: z.number(),
      lengthOneWayM: z.number(),
      conductor: size,
      ampacityA: z.number().nullable(),
      dropV: z.number(),
      dropPercent: z.number(),
      dropLimitPercent: z.number(),
      conductorC: z.number(),
      protection: z
        .strictObject({ ratingA: z.number(), minA: z.number(), maxA: z.number().nullable() })
        .nullable(),
    }),
  ),
  /** The drop nearest to its own limit, or furthest over it; null if there is none. */
  worstDrop: z
    .strictObject({
      name: z.string(),
      fromBank: z.boolean(),
      dropPercent: z.number(),
      dropLimitPercent: z.number(),
      overloaded: z.boolean(),
    })
    .nullable(),
  /** null: the plan has no network. Not judged: a value of it was refused, and a finding states which. */
  network: z
    .discriminatedUnion("judged", [solvedNetwork, z.strictObject({ judged: z.literal(false) })])
    .nullable(),
  findings: z.array(
    z.strictObject({
      rule: z.string(),
      severity: z.enum(["error", "warning", "info", "hint"]),
      subject: z.string(),
      property: z.string().optional(),
      message: z.string(),
      ...lines,
      accepted: z.string().optional(),
      related: z.array(z.strictObject({ ...lines, text: z.string() })),
      /**
       * Present only if no fix was tried although there may be one: in a plan with very many findings, only the first ones get
       * theirs.
       */
      fixesTried: z.literal(false).optional(),
      fixes: z.array(
        z.strictObject({
          title: z.string(),
          kind: z.enum(["repair", "suggestion"]),
          edits: z.array(z.strictObject({ ...lines, newText: z.string() })),
        }),
      ),
    }),
  ),
});

/**
 * The version of the report's shape. It increases by one with every property that is removed, renamed or changes its meaning, and
 * with every value that an enumeration loses. Properties and values may be added under the same version: readers ignore unknown
 * ones.
 */
export const schemaVersion = 1;

/**
 * The shape of `loomwright check --format json`. Numbers are unrounded; files are relative to where the command ran, with forward
 * slashes.
 */
export const jsonReportSchema = z.strictObject({
  schemaVersion: z.literal(schemaVersion),
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  /** Present only if a share of the plans was asked for; `loomwright merge` removes it. */
  shard: shardSchema.optional(),
  plans: z.array(planSchema),
  /** Files that look like plans, or belong to one, and are in none of the plans. */
  passedBy: z.array(
    z.strictObject({
      file: z.string(),
      reason: z.enum(passedByReasons),
      /** A clause whose subject is the file. */
      why: z.string(),
      /** It may contain a hazard: the check is then incomplete and exits with 2. */
      mayHideHazard: z.boolean(),
    }),
  ),
  summary: z.strictObject({
    plans: z.int().min(0),
    /** Plans that were not judged to their end, and passed-by files that may hide a hazard. */
    notJudged: z.int().min(0),
    passedBy: z.int().min(0),
    errors: z.int(),
    warnings: z.int(),
    infos: z.int(),
    hints: z.int(),
    accepted: z.int(),
  }),
});

export type JsonReport = z.infer<typeof jsonReportSchema>;
export type JsonPlan = z.infer<typeof planSchema>;

/** The report as text, ending in a line break. */
export function jsonReport({ plans, passedBy, shard }: CheckedPlans): string {
  const all = plans.flatMap(({ findings }) => findings);
  const open = all.filter(({ accepted }) => accepted === undefined);
  const of = (severity: ReportedFinding["severity"]) =>
    open.filter((finding) => finding.severity === severity).length;
  const stopped = plans.filter(({ evaluated }) => !evaluated).length;
  const report: JsonReport = {
    schemaVersion,
    tool: { name, version },
    ...(shard ? { shard: { ...shard } } : {}),
    plans: plans.map(planInJson),
    passedBy: passedBy.map(({ file, reason, why }) => ({
      ...{ file, reason, why, mayHideHazard: mayHideHazard({ reason }) },
    })),
    summary: {
      plans: plans.length,
      notJudged: stopped + passedBy.filter(mayHideHazard).length,
      passedBy: passedBy.length,
      errors: of("error"),
      warnings: of("warning"),
      infos: of("info"),
      hints: of("hint"),
      accepted: all.length - open.length,
    },
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** A plan as JSON. The schema's lists are mutable and the report's are not: hence a copy. */
export function planInJson(plan: Reported): JsonPlan {
  const { file, evaluated, notJudged, circuits, worstDrop, network, networkUnread, findings } = plan;
  return structuredClone({
    ...{ file, evaluated, notJudged, circuits, worstDrop: worstDrop ?? null },
    network: network ? networkInJson(network) : networkUnread ? { judged: false } : null,
    findings: findings.map(
      ({ rule, severity, subject, property, message, accepted, related, fixesTried, fixes, ...at }) => ({
        ...{ rule, severity, subject, ...(property === undefined ? {} : { property }), message },
        ...linesOf(at),
        ...(accepted === undefined ? {} : { accepted }),
        related: related.map(({ text, ...seen }) => ({ ...linesOf(seen), text })),
        ...(fixesTried === undefined ? {} : { fixesTried }),
        fixes: fixes.map(({ title, kind, edits }) => ({
          ...{ title, kind },
          edits: edits.map(({ newText, ...edited }) => ({ ...linesOf(edited), newText })),
        })),
      }),
    ),
  }) as JsonPlan;
}

/** The reverse: a plan from JSON that the schema has validated. */
export function planFromJson(plan: JsonPlan, lineText: Reported["lineText"]): Reported {
  const { network, worstDrop, ...rest } = plan;
  const solved = network?.judged ? network : undefined;
  return {
    ...rest,
    worstDrop: worstDrop ?? undefined,
    network: solved && {
      ...solved,
      summary: {
        ...solved.summary,
        hardest: solved.summary.hardest ?? undefined,
        lowest: solved.summary.lowest ?? undefined,
      },
    },
    networkUnread: network?.judged === false,
    lineText,
  } as Reported;
}

function networkInJson({
  contents,
  summary,
  scenarios,
  parts,
  conductors,
  waysFromBank,
}: ReportedNetwork): unknown {
  const { hardest = null, lowest = null } = summary;
  const inShort = { scenarios: summary.scenarios, unsolved: summary.unsolved, hardest, lowest };
  return { judged: true, contents, summary: inShort, scenarios, parts, conductors, waysFromBank };
}

function linesOf({ file, line, column, endLine, endColumn }: Lines): Lines {
  return { file, line, column, endLine, endColumn };
}
