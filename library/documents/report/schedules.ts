import type { Table } from "../table.ts";
import { tableForPeople, withoutRepetition } from "../table-for-people.ts";
import type { Chapter, ReportContext } from "./chapter.ts";
import type { Block } from "./report-content.ts";

/** The lists that the builder takes to the bench. */
export function schedulesChapter(context: ReportContext): Chapter {
  return listsChapter(context, { id: "schedules", title: "Schedules and lists" }, () => true);
}

/** The bench's edition has no lists for buying, and its checks are a chapter of their own. */
export function wiresAndFusesChapter(context: ReportContext): Chapter {
  const chapter = listsChapter(context, { id: "schedules", title: "Wires and fuses" }, (id) =>
    ["wire-schedule", "fuse-map"].includes(id),
  );
  if (!context.judgement.placement?.layout.surfaces.length) return chapter;
  const text =
    "loomwright draw --view board draws the surfaces to scale, and prints them in true size to drill by.";
  return { ...chapter, blocks: [{ kind: "paragraph", text }, ...chapter.blocks] };
}

export function firstPowerChapter({ schedules }: ReportContext): Chapter {
  const checks = schedules.filter(({ id }) => id.startsWith("first-power"));
  return {
    id: "first-power",
    title: "Checks before first power",
    orientation: "portrait",
    blocks: checks.map(listBlock),
  };
}

function listsChapter(
  { schedules, notices }: ReportContext,
  { id, title }: Pick<Chapter, "id" | "title">,
  isIn: (table: string) => boolean,
): Chapter {
  const tables = schedules.filter(({ id, rows }) => rows.length > 0 && id !== labels && isIn(id));
  return {
    ...{ id, title, orientation: "landscape" },
    blocks: [
      ...(notices.length > 0
        ? [{ kind: "notice", title: "Not as it was kept", lines: notices } as const]
        : []),
      ...(tables.length > 0
        ? tables.map(listBlock)
        : [
            {
              kind: "paragraph",
              text: "This plan has no wire to cut, part to buy or end to label.",
            } as const,
          ]),
    ],
  };
}

function listBlock(table: Table): Block {
  return { kind: "table", table: withoutRepetition(tableForPeople(table)) };
}

/** They are printed on sheets of their own; each text is in the wire schedule too. */
const labels = "labels";
