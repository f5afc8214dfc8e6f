import { drawFrontView } from "../../library/documents/front-view/draw-front-view.ts";
import type { Judgement } from "../../library/judge.ts";
import type { BoardPicture } from "./messages.ts";

/** The front view of a surface of a plan, for the screen. */
export function boardPicture(
  judgement: Judgement,
  surface: number,
  { title, conductors }: { readonly title: string; readonly conductors: boolean },
): BoardPicture {
  const { svg, widthPx, heightPx, frame } = drawFrontView(judgement, surface, {
    ...{ medium: "screen", title, conductors },
  })!;
  return { svg, width: widthPx, height: heightPx, x: frame.x, y: frame.y, perMm: frame.pxPerMm };
}
