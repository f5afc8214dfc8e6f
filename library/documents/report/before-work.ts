import { counted } from "../../rules/wording/format-number.ts";
import { cautions, planningAid } from "./cautions.ts";
import type { Chapter, NumberedFinding, ReportContext } from "./chapter.ts";
import { findingInWords } from "./findings.ts";
import { notJudged } from "./not-judged.ts";
import type { Block } from "./report-content.ts";
import { inOneLine } from "./report-content.ts";
import { planFacts } from "./summary.ts";

/** The first page of the bench's edition: every hazard that is known, before anybody takes up a tool. */
export function beforeWorkChapter(context: ReportContext): Chapter {
  const { judgement, numbered } = context;
  const untold = notJudged(judgement, numbered);
  const open = numbered.filter(({ accepted }) => accepted === undefined);
  const grave = open.filter(({ severity }) => severity === "error" || severity === "warning");
  const rest = open.length - grave.length;
  const accepted = numbered.length - open.length;
  return {
    id: "before-work",
    title: "Before you work",
    orientation: "portrait",
    blocks: [
      ...(untold.length > 0
        ? [{ kind: "notice", title: "Not judged in this plan", lines: untold } as const]
        : []),
      ...findingsNotice(grave),
      { kind: "notice", title: "Cautions", lines: cautions },
      { kind: "paragraph", text: planningAid.join(" ") },
      { kind: "facts", facts: planFacts(context) },
      {
        kind: "paragraph",
        text: `The inspector's edition has all the rest: the figures of every circuit and device, the lists for buying, ${others(rest, accepted)}the assumptions, the limits with their sources, and the subjects that are not checked.`,
      },
    ],
  };
}

function findingsNotice(grave: readonly NumberedFinding[]): readonly Block[] {
  if (grave.length === 0) return [];
  const lines = grave.map((finding) => {
    const { number, severity } = finding;
    return `${number} ${severity}: ${inOneLine(findingInWords(finding))}`;
  });
  return [{ kind: "notice", title: "Findings: correct them before you build", lines }];
}

function others(rest: number, accepted: number): string {
  return [
    rest > 0 ? `${counted(rest, "finding")} for information, ` : "",
    accepted > 0 ? `${counted(accepted, "accepted finding")} with the reasons, ` : "",
  ].join("");
}
