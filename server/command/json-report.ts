import { z } from "zod";
import { name, version } from "../../library/package.json";
import type { ReportedNetwork } from "./reported-network.ts";
import type { Reported, ReportedFinding } from "./reported-plan.ts";

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

/** Scenarios are named by their place in the network's list. */
const scenario = z.int().min(0);
const worst = z.strictObject({ currentA: z.number(), scenario }).nullable();
const terminal = z.strictObject({ part: z.string(), terminal: z.string() });

const solvedNetwork = z.strictObject({
  judged: z.literal(true),
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

/**
 * The shape of `loomwright check --format json`. Stable: properties are added, never renamed or removed, within a major
 * version. Numbers are unrounded; files are relative to where the command ran, with forward slashes.
 */
export const jsonReportSchema = z.strictObject({
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  plans: z.array(
    z.strictObject({
      file: z.string(),
      circuits: z.array(
        z.strictObject({
          name: z.string(),
          file: z.string(),
          line: z.int().min(1),
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
      /** null: the plan has no network. Not judged: a value of it was refused, and a finding says which. */
      network: z
        .discriminatedUnion("judged", [solvedNetwork, z.strictObject({ judged: z.literal(false) })])
        .nullable(),
      findings: z.array(
        z.strictObject({
          rule: z.string(),
          severity: z.enum(["error", "warning", "info", "hint"]),
          subject: z.string(),
          message: z.string(),
          ...lines,
          accepted: z.string().optional(),
          fixes: z.array(
            z.strictObject({
              title: z.string(),
              edits: z.array(z.strictObject({ ...lines, newText: z.string() })),
            }),
          ),
        }),
      ),
    }),
  ),
  summary: z.strictObject({
    errors: z.int(),
    warnings: z.int(),
    infos: z.int(),
    hints: z.int(),
    accepted: z.int(),
  }),
});

type JsonReport = z.infer<typeof jsonReportSchema>;

/** What is only for text is left out. The schema's lists may be changed, the report's may not: hence a copy. */
function networkInJson({
  scenarios,
  parts,
  conductors,
  waysFromBank,
}: ReportedNetwork): z.infer<typeof solvedNetwork> {
  const copy = structuredClone({ scenarios, parts, conductors, waysFromBank });
  return { judged: true, ...(copy as Omit<z.infer<typeof solvedNetwork>, "judged">) };
}

/** The report as text, ending in a line break. */
export function jsonReport(plans: readonly Reported[]): string {
  const all = plans.flatMap(({ findings }) => findings);
  const open = all.filter(({ accepted }) => accepted === undefined);
  const of = (severity: ReportedFinding["severity"]) =>
    open.filter((finding) => finding.severity === severity).length;
  const report: JsonReport = {
    tool: { name, version },
    plans: plans.map(({ file, circuits, network, networkUnread, findings }) => ({
      file,
      circuits: circuits.map((circuit) => ({ ...circuit })),
      network: network ? networkInJson(network) : networkUnread ? { judged: false } : null,
      findings: findings.map(({ related, fixes, ...finding }) => ({
        ...finding,
        fixes: fixes.map(({ title, edits }) => ({ title, edits: edits.map((edit) => ({ ...edit })) })),
      })),
    })),
    summary: {
      errors: of("error"),
      warnings: of("warning"),
      infos: of("info"),
      hints: of("hint"),
      accepted: all.length - open.length,
    },
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}
