import type { View } from "../diagram/drawing.ts";
import type { Chapter, ReportContext } from "./chapter.ts";
import type { Block } from "./report-content.ts";

/** The drawings, each on a page of its own. */
export function diagramsChapter({ drawings, judgement }: ReportContext): Chapter {
  const [first, ...others] = drawings.map(({ drawing }) =>
    drawing.widthPx < drawing.heightPx ? "portrait" : "landscape",
  );
  const blocks = drawings.flatMap(({ view, drawing }, index): readonly Block[] => [
    ...(index > 0 ? [{ kind: "newPage", orientation: others[index - 1] ?? "landscape" } as const] : []),
    {
      kind: "figure",
      svg: drawing.svg,
      widthPx: drawing.widthPx,
      heightPx: drawing.heightPx,
      caption: captions[view],
      description: drawing.elements.map(({ description }) => description).join(" "),
    },
  ]);
  return {
    id: "diagrams",
    title: "Diagrams",
    // A page lies or stands as its drawing does.
    orientation: first ?? "portrait",
    blocks: [
      ...(judgement.model.networkUnread
        ? [
            {
              kind: "notice",
              title: "Not drawn",
              lines: ["The network could not be read, so only circuits that can stand alone are drawn."],
            } as const,
          ]
        : []),
      ...blocks,
    ],
  };
}

const captions: Readonly<Record<View, string>> = {
  "one-line": "One-line diagram: a line stands for both conductors of a circuit",
  wiring: "Wiring diagram: every conductor of both polarities, from terminal to terminal",
};
