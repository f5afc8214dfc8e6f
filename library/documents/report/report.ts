import { assumptionsChapter } from "./assumptions.ts";
import { beforeWorkChapter } from "./before-work.ts";
import { boardsChapter } from "./boards.ts";
import { cautionsChapter } from "./cautions.ts";
import type { Chapter, ReportContext, ReportEdition, ReportInput } from "./chapter.ts";
import { diagramsChapter } from "./diagrams.ts";
import { energyChapter } from "./energy.ts";
import { acceptedChapter, findingsChapter } from "./findings.ts";
import { limitsChapter } from "./limits.ts";
import { networkChapter } from "./network-figures.ts";
import { notCheckedChapter } from "./not-checked.ts";
import { numberFindings } from "./numbered-findings.ts";
import type { Block, ReportContent } from "./report-content.ts";
import { runsChapter } from "./runs.ts";
import { firstPowerChapter, schedulesChapter, wiresAndFusesChapter } from "./schedules.ts";
import { createSourceList } from "./sources.ts";
import { summaryChapter } from "./summary.ts";

/**
 * A report of a plan. The inspector's edition has everything, for those who inspect, insure or continue the build: the checks with
 * their limits, the findings, the defaults, the items not checked. The same input gives the same content. Only for a plan that ran to its end: for any other, the
 * only report is the reason why not.
 */
export function reportContent(input: ReportInput): ReportContent {
  const context: ReportContext = {
    ...input,
    numbered: numberFindings(input.findings),
    sources: createSourceList(),
  };
  const chapters = input.edition === "bench" ? benchChapters(context) : inspectorChapters(context);
  return {
    title: input.judgement.model.build.name ?? input.file,
    subtitle: subtitles[input.edition],
    madeBy: input.madeBy,
    blocks: numberedBlocks(chapters),
  };
}

const subtitles: Readonly<Record<ReportEdition, string>> = {
  inspector: "Electrical plan: what was checked, what was found, what was not checked",
  bench: "Electrical plan for the bench: drawing, wire schedule, fuse map, checks before first power",
};

/** In reading order: sources get their numbers as they are cited, and their chapter comes after all that cite. */
function inspectorChapters(context: ReportContext): readonly Chapter[] {
  return [
    summaryChapter(context),
    diagramsChapter(context),
    ...boardsChapter(context),
    runsChapter(context),
    networkChapter(context),
    ...energyChapter(context),
    schedulesChapter(context),
    findingsChapter(context),
    acceptedChapter(context),
    assumptionsChapter(context),
    notCheckedChapter(context),
    limitsChapter(context),
    cautionsChapter(),
  ];
}

function benchChapters(context: ReportContext): readonly Chapter[] {
  return [
    beforeWorkChapter(context),
    diagramsChapter(context),
    wiresAndFusesChapter(context),
    firstPowerChapter(context),
  ];
}

function numberedBlocks(chapters: readonly Chapter[]): readonly Block[] {
  let lies: Chapter["orientation"] = "portrait";
  return chapters.flatMap(
    ({ id, title, orientation, follows = false, blocks, sections = [] }, index): readonly Block[] => {
      const number = String(index + 1);
      // Portrait chapters follow each other; a landscape one begins a page, unless it has only a few words.
      const turns = lies !== orientation || (orientation === "landscape" && !follows);
      const turned = blocks.findLast((block) => block.kind === "newPage");
      lies = turned?.kind === "newPage" ? turned.orientation : orientation;
      return [
        ...(turns ? [{ kind: "newPage", orientation } as const] : []),
        { kind: "heading", level: 2, id, number, text: title },
        ...blocks,
        ...sections.flatMap((section, at): readonly Block[] => [
          { kind: "heading", level: 3, id: section.id, number: `${number}.${at + 1}`, text: section.title },
          ...section.blocks,
        ]),
      ];
    },
  );
}
