import type { Chapter, ReportContext } from "./chapter.ts";

/** What the builder carries to the bench. */
export function schedulesChapter({ schedules }: ReportContext): Chapter {
  return {
    id: "schedules",
    title: "Schedules and lists",
    orientation: "landscape",
    blocks:
      schedules.length === 0
        ? [{ kind: "paragraph", text: "There is nothing to cut, to buy or to label in this plan." }]
        : schedules.map((table) => ({ kind: "table", table })),
  };
}
