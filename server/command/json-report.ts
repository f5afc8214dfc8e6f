import { name, version } from "../../library/package.json";
import { mayHideHazard } from "../evaluate/files/passed-by.ts";
import type { CheckedPlans } from "./check-result.ts";
import { type JsonReport, type ReportedFinding, schemaVersion } from "./report-schema.ts";

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
    plans: plans.map(({ lineText: _, ...plan }) => plan),
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
