import type { Chapter, ReportContext } from "./chapter.ts";

/** The lists that the builder takes to the bench. */
export function schedulesChapter({ schedules, notices }: ReportContext): Chapter {
  const tables = schedules.filter(({ id, rows }) => rows.length > 0 && id !== labels);
  return {
    id: "schedules",
    title: "Schedules and lists",
    orientation: "landscape",
    blocks: [
      ...(notices.length > 0
        ? [{ kind: "notice", title: "Not as it was kept", lines: notices } as const]
        : []),
      ...(tables.length > 0
        ? tables.map((table) => ({ kind: "table", table }) as const)
        : [
            {
              kind: "paragraph",
              text: "This plan has no wire to cut, part to buy or end to label.",
            } as const,
          ]),
    ],
  };
}

/** They are printed on sheets of their own; each text is in the wire schedule too. */
const labels = "labels";
