import type { DrawingOutcome, View } from "../diagram/drawing.ts";
import type { Chapter, ReportContext, ReportEdition } from "./chapter.ts";
import type { Block } from "./report-content.ts";

/** The drawings, each on a page of its own, in the orientation of the drawing. */
export function diagramsChapter({ drawings, edition }: ReportContext): Chapter {
  const [first] = drawings;
  return {
    id: "diagrams",
    title: edition === "bench" ? "Drawing" : "Diagrams",
    orientation: first ? orientationOf(first.outcome) : "portrait",
    blocks: drawings.flatMap(({ view, outcome }, index): readonly Block[] => [
      ...(index > 0 ? [{ kind: "newPage", orientation: orientationOf(outcome) } as const] : []),
      ...figure(view, outcome, edition),
    ]),
  };
}

function orientationOf(outcome: DrawingOutcome): "portrait" | "landscape" {
  return outcome.drawn && outcome.drawing.widthPx >= outcome.drawing.heightPx ? "landscape" : "portrait";
}

function figure(view: View, outcome: DrawingOutcome, edition: ReportEdition): readonly Block[] {
  const caption = captions[view];
  if (!outcome.drawn) return [{ kind: "notice", title: `Not drawn: ${caption}`, lines: [outcome.why] }];
  const { svg, widthPx, heightPx, elements, notices } = outcome.drawing;
  const description = [...notices, ...elements.map((element) => element.description)].join(" ");
  const bench = edition === "bench" ? ({ onlyReadable: true } as const) : {};
  return [{ kind: "figure", svg, widthPx, heightPx, caption, description, ...bench }];
}

const captions: Readonly<Record<View, string>> = {
  "one-line": "One-line diagram: one line for both conductors of a circuit",
  wiring: "Wiring diagram: every conductor of both polarities, from terminal to terminal",
};
