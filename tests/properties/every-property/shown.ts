import { isDeepStrictEqual } from "node:util";
import { oneLineSchematic } from "../../../library/documents/diagram/one-line-schematic.ts";
import { wiringSchematic } from "../../../library/documents/diagram/wiring-schematic.ts";
import { energyTables } from "../../../library/documents/energy/energy-tables.ts";
import { reportContent } from "../../../library/documents/report/report.ts";
import { benchDocuments } from "../../../library/documents/schedules/bench-documents.ts";
import { numberWires } from "../../../library/documents/schedules/wire-numbers.ts";
import { readWireNumbers } from "../../../library/documents/schedules/wire-numbers-file.ts";
import { wiresOf } from "../../../library/documents/schedules/wires.ts";
import type { Judgement } from "../../../library/judge.ts";
import { ruleById } from "../../../library/rules/registry.ts";

/** Whether a builder sees a difference: in a finding, a list, a drawing, or the report. */
export function looksDifferent(one: Judgement, other: Judgement): boolean {
  const views = [findingsInWords, schedulesOf, drawingsOf, energyOf, reportOf];
  return views.some((view) => !isDeepStrictEqual(view(one), view(other)));
}

/** One line a finding. */
function findingsInWords({ findings }: Judgement): string[] {
  return findings.map(({ rule, severity, subject, values, accepted = "", followsFrom, related }) => {
    const message = ruleById(rule)!.message(values);
    const others = related.map(({ text }) => text).join("; ");
    return [severity, rule, subject, message, others, accepted, followsFrom?.rule ?? ""].join(" | ");
  });
}

/** The findings of one rule, a line each. */
export function findingsOf({ findings, ...plan }: Judgement, rule: string): string[] {
  return findingsInWords({ ...plan, findings: findings.filter((finding) => finding.rule === rule) });
}

function schedulesOf(judgement: Judgement) {
  return benchDocuments(judgement, numberWires(wiresOf(judgement), readWireNumbers(undefined)));
}

/** The content of both drawings, without the place of a word on the page. */
function drawingsOf(judgement: Judgement) {
  const wiring = wiringSchematic(judgement, 0);
  return [wiring, oneLineSchematic(wiring)];
}

/** The tables of `loomwright energy`. */
function energyOf({ energy }: Judgement) {
  return energy.flatMap(energyTables);
}

function reportOf(judgement: Judgement) {
  return reportContent({
    edition: "inspector",
    ...{ madeBy: "Loomwright", file: "plan.ts", judgement, schedules: [], drawings: [], notices: [] },
    findings: judgement.findings.map((finding) => ({
      ...finding,
      subjects: [finding.subject],
      message: ruleById(finding.rule)!.message(finding.values),
      place: "",
    })),
  });
}

/** The calculated figures alone: no property of the plan is in them as it was written. */
export function figuresOf({ network, circuits, energy }: Judgement) {
  return {
    energy: energy.map(({ banks }) =>
      banks.map(({ months, sources, consumers }) => ({
        ...{ months, sources },
        consumers: consumers.map(({ dailyWh }) => dailyWh),
      })),
    ),
    scenarios: network?.result.scenarios,
    conductors: network?.result.conductors,
    parts: network?.result.parts,
    supplyPaths: network?.result.supplyPaths.map(({ dropLimitSource: _, ...path }) => path),
    faults: network?.result.faults,
    runs: circuits.map(({ result }) => result),
  };
}
