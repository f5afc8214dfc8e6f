import { groupedBy } from "../../analysis/grouped-by.ts";
import type { Cause } from "../../rules/finding.ts";
import { rules } from "../../rules/registry.ts";
import { counted } from "../../rules/wording/format-number.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import type { Chapter, NumberedFinding, ReportContext } from "./chapter.ts";
import type { Block, FindingInWords } from "./report-content.ts";

/** Every open finding. */
export function findingsChapter(context: ReportContext): Chapter {
  const open = context.numbered.filter(({ accepted }) => accepted === undefined);
  return {
    id: "findings",
    title: "Findings",
    orientation: "portrait",
    blocks:
      open.length === 0
        ? [
            {
              kind: "paragraph",
              text: "No checked value is beyond its limit. The subjects that were not checked have a chapter of their own.",
            },
          ]
        : [{ kind: "paragraph", text: intro }, ...blocksOf(open, context)],
  };
}

/** A finding that is folded is below its cause, unless the cause is elsewhere. */
function blocksOf(open: readonly NumberedFinding[], context: ReportContext): readonly Block[] {
  const shownAt = new Map(open.map((one) => [one, one.followsFrom?.folded ? causeOf(one, open) : undefined]));
  const folded = groupedBy(open, (one) => shownAt.get(one));
  return open
    .filter((one) => shownAt.get(one) === undefined)
    .map((finding) => findingBlock(finding, context, folded.get(finding) ?? []));
}

function causeOf(
  { followsFrom: cause }: NumberedFinding,
  all: readonly NumberedFinding[],
): NumberedFinding | undefined {
  return cause && all.find(({ rule, subjects }) => rule === cause.rule && subjects.includes(cause.subject));
}

/** Every finding that the builder has accepted, with the reason. */
export function acceptedChapter(context: ReportContext): Chapter {
  const accepted = context.numbered.filter((finding) => finding.accepted !== undefined);
  return {
    id: "accepted",
    title: "Accepted findings",
    orientation: "portrait",
    blocks:
      accepted.length === 0
        ? [{ kind: "paragraph", text: "The plan accepts no finding." }]
        : [
            {
              kind: "paragraph",
              text: "These findings remain. The author of the plan has accepted each of them, and gives a reason; whether it is a good one was not judged.",
            },
            ...accepted.map((finding) => findingBlock(finding, context, [])),
          ],
  };
}

const intro =
  "The worst first. Each names the circuit or part, its place in the plan, and the source of its limit. A finding that follows from another one is listed under it. An error must be corrected; a warning too, unless there is a reason that can be written down; information and hints are for your knowledge.";

function findingBlock(
  finding: NumberedFinding,
  { sources, numbered }: ReportContext,
  following: readonly NumberedFinding[],
): Block {
  const { rule, accepted } = finding;
  const cited = rules.find(({ id }) => id === rule)?.sources ?? [];
  return {
    kind: "finding",
    ...findingInWords(finding),
    ...(accepted === undefined ? {} : { accepted }),
    // Up to two documents are cited in full; for more, the list of sources gives them.
    source:
      cited.length <= 2 ? cited.map(sources.cite).join("; ") : distinct(cited.map(sources.short)).join(", "),
    ...(finding.followsFrom && {
      followsFrom: causeInWords(finding.followsFrom, causeOf(finding, numbered)),
    }),
    ...(following.length > 0 && {
      following: {
        title: `${counted(following.length, "finding")} ${following.length === 1 ? "follows" : "follow"} from it:`,
        findings: following.map(findingInWords),
      },
    }),
  };
}

export function findingInWords({
  number,
  severity,
  rule,
  subjects,
  message,
  place,
}: NumberedFinding): FindingInWords {
  return { number, severity, rule, subject: listInWords(subjects, subjects.length), message, place };
}

function causeInWords({ rule, subject }: Cause, cause: NumberedFinding | undefined): string {
  return `${rule} at ${subject}${cause ? ` (${cause.number})` : ""}`;
}

function distinct(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)];
}
