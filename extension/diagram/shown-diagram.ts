import type { Diagram, DiagramElement } from "../../server/language/messages.ts";
import type { ShowDiagram, ShownElement } from "./messages.ts";

/** The diagram data that the page receives. */
export function shownDiagram(diagram: Diagram, root: string, number: number): ShowDiagram {
  const { picture, versions, title, current, notes, view, colours, scenarios, scenario } = diagram;
  return {
    ...{ type: "diagram", number, root, versions, title, current, notes, view, colours, scenarios },
    ...(scenario === undefined ? {} : { scenario }),
    ...(picture ? { picture: { ...picture, elements: picture.elements.map(shownElement) } } : {}),
  };
}

function shownElement({ location, ...element }: DiagramElement): ShownElement {
  return { ...element, written: location !== undefined };
}
