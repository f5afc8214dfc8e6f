import { rules } from "../../rules/registry.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import type { Chapter, NumberedFinding, ReportContext } from "./chapter.ts";
import type { Block } from "./report-content.ts";

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
        : [{ kind: "paragraph", text: intro }, ...open.map((finding) => findingBlock(finding, context))],
  };
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
            ...accepted.map((finding) => findingBlock(finding, context)),
          ],
  };
}

const intro =
  "The worst first. Each names the circuit or part, its place in the plan, and the source of its limit. An error must be corrected; a warning too, unless there is a reason that can be written down; information and hints are for your knowledge.";

function findingBlock(finding: NumberedFinding, { sources }: ReportContext): Block {
  const { number, severity, rule, subjects, message, place, accepted } = finding;
  const cited = rules.find(({ id }) => id === rule)?.sources ?? [];
  return {
    kind: "finding",
    ...{ number, severity, rule, place },
    subject: listInWords(subjects, subjects.length),
    message,
    ...(accepted === undefined ? {} : { accepted }),
    // Up to two documents are cited in full; for more, the list of sources gives them.
    source:
      cited.length <= 2 ? cited.map(sources.cite).join("; ") : distinct(cited.map(sources.short)).join(", "),
  };
}

function distinct(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)];
}
