import { z } from "zod";
import { name, version } from "../../library/package.json";
import type { Reported, ReportedFinding } from "./reported-plan.ts";

const lines = {
  file: z.string(),
  line: z.int().min(1),
  column: z.int().min(1),
  endLine: z.int().min(1),
  endColumn: z.int().min(1),
};

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
          conductor: z.strictObject({
            awg: z.union([z.number(), z.string()]).optional(),
            mm2: z.number().optional(),
            parallel: z.int().min(2).optional(),
          }),
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

/** The report as text, ending in a line break. */
export function jsonReport(plans: readonly Reported[]): string {
  const all = plans.flatMap(({ findings }) => findings);
  const open = all.filter(({ accepted }) => accepted === undefined);
  const of = (severity: ReportedFinding["severity"]) =>
    open.filter((finding) => finding.severity === severity).length;
  const report: JsonReport = {
    tool: { name, version },
    plans: plans.map(({ file, circuits, findings }) => ({
      file,
      circuits: circuits.map((circuit) => ({ ...circuit })),
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
