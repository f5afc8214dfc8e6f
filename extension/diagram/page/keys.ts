import type { ShownElement } from "../messages.ts";
import type { Point } from "../place.ts";
import type { Elements } from "./elements.ts";
import type { Stage } from "./stage.ts";
import { zoomStep } from "./toolbar.ts";

/** Handles a key while an element has the focus: moves to the next element, or to its line. True: the key was used. */
export function keyOnElement(
  { key, shiftKey }: KeyboardEvent,
  element: ShownElement,
  { elements, goTo }: { readonly elements: Elements; goTo(element: ShownElement): void },
): boolean {
  const focus = (next: ShownElement | undefined) => {
    if (next) elements.focus(next.id);
    return next !== undefined;
  };
  switch (key) {
    case "Tab":
      // Past either end the browser moves on, to the strip below or back to the picture.
      return focus(elements.neighbour(element.id, shiftKey ? -1 : 1));
    case "ArrowRight":
    case "ArrowDown":
      return focus(elements.neighbour(element.id, 1)) || true;
    case "ArrowLeft":
    case "ArrowUp":
      return focus(elements.neighbour(element.id, -1)) || true;
    case "Home":
      return focus(elements.all()[0]);
    case "End":
      return focus(elements.all().at(-1));
    case "Enter":
    case " ":
      goTo(element);
      return true;
    default:
      return false;
  }
}

/** Handles a key while the picture has the focus: moves or scales it. True: the key was used. */
export function keyOnPicture({ key, shiftKey }: KeyboardEvent, stage: Stage): boolean {
  const step = shiftKey ? 200 : 50;
  const steps: Readonly<Record<string, Point>> = {
    ArrowLeft: { x: step, y: 0 },
    ArrowRight: { x: -step, y: 0 },
    ArrowUp: { x: 0, y: step },
    ArrowDown: { x: 0, y: -step },
  };
  const by = steps[key];
  if (by) stage.push(by);
  else if (key === "+" || key === "=") stage.zoom(zoomStep);
  else if (key === "-") stage.zoom(1 / zoomStep);
  else if (key === "0") stage.showAll();
  else return false;
  return true;
}
