import type { BoardPart, BoardSurface } from "../../../server/language/messages.ts";
import type { Outline } from "../snapping.ts";

/** The surfaces one below another, each with its picture and a handle over each of its parts. */
export interface Handles {
  show(surfaces: readonly BoardSurface[], parts: readonly BoardPart[], readPicture: ReadPicture): void;
  /** Puts the handle of a part over a place, or takes away that of one without a place. */
  put(part: BoardPart, at: Spot | undefined): HTMLElement | undefined;
  handleOf(record: number): HTMLElement | undefined;
  /** The button that has places on a surface looked for. */
  suggestButton(surface: number): HTMLElement | undefined;
  /** The surface under a point of the window, with that point in mm. */
  under(x: number, y: number): PointOnSurface | undefined;
  /** Millimetres in a pixel of the window. */
  mmPerPixel(surface: number): number;
}

/** A picture made of allowed content only, or undefined. */
type ReadPicture = (svg: string) => SVGSVGElement | undefined;

export interface Spot extends Outline {
  /** Record of the surface. */
  readonly on: number;
}

interface PointOnSurface {
  readonly on: number;
  readonly left: number;
  readonly top: number;
}

interface Stage {
  readonly figure: HTMLElement;
  readonly heading: HTMLElement;
  readonly button: HTMLElement;
  readonly frame: HTMLElement;
  surface: BoardSurface;
  drawn: string;
}

/** A part without a stated size gets a handle that can be taken hold of, mm. */
const leastMm = 30;

/** @param suggest Looks for places on a surface. */
export function createHandles(
  place: HTMLElement,
  create: (record: number) => HTMLElement,
  suggest: (surface: number) => void,
): Handles {
  const stages = new Map<number, Stage>();
  const handles = new Map<number, HTMLElement>();

  const stageFor = (surface: BoardSurface): Stage => {
    const known = stages.get(surface.record);
    if (known) return known;
    const [figure, heading, button, frame] = [
      document.createElement("section"),
      document.createElement("h2"),
      document.createElement("button"),
      document.createElement("div"),
    ];
    button.type = "button";
    button.className = "suggest";
    button.textContent = "Suggest an arrangement";
    button.addEventListener("click", () => suggest(surface.record));
    heading.id = `surface-${surface.record}`;
    figure.className = "board";
    figure.setAttribute("aria-labelledby", heading.id);
    frame.className = "stage";
    figure.append(heading, button, frame);
    const stage = { figure, heading, button, frame, surface, drawn: "" };
    stages.set(surface.record, stage);
    return stage;
  };
  const draw = (stage: Stage, readPicture: ReadPicture) => {
    const { svg, width, height } = stage.surface.picture;
    if (svg === stage.drawn) return;
    const picture = readPicture(svg);
    if (!picture) return;
    stage.drawn = svg;
    picture.setAttribute("aria-hidden", "true");
    stage.frame.style.aspectRatio = `${width} / ${height}`;
    stage.frame.style.setProperty("--own-width", `${width}px`);
    stage.frame.querySelector("svg")?.remove();
    stage.frame.prepend(picture);
  };
  /** The pixels of the window that a unit of the picture has. */
  const scaleOf = ({ frame, surface }: Stage) => frame.getBoundingClientRect().width / surface.picture.width;

  return {
    show(surfaces, parts, readPicture) {
      const wanted = new Set(surfaces.map(({ record }) => record));
      for (const [record, { figure }] of stages) {
        if (wanted.has(record)) continue;
        figure.remove();
        stages.delete(record);
      }
      for (const surface of surfaces) {
        const stage = stageFor(surface);
        stage.surface = surface;
        stage.heading.textContent = `${surface.name}, ${surface.size}`;
        stage.button.setAttribute("aria-label", `Suggest an arrangement on ${surface.name}`);
        draw(stage, readPicture);
        if (stage.figure.parentElement !== place) place.append(stage.figure);
      }
      const shown = new Set(parts.map(({ record }) => record));
      for (const [record, handle] of handles) {
        if (shown.has(record)) continue;
        handles.delete(record);
        handle.remove();
      }
    },
    put(part, at) {
      const stage = at && stages.get(at.on);
      if (!stage) {
        const gone = handles.get(part.record);
        handles.delete(part.record);
        gone?.remove();
        return undefined;
      }
      let handle = handles.get(part.record);
      if (!handle) {
        handle = create(part.record);
        handles.set(part.record, handle);
      }
      const { picture } = stage.surface;
      const percent = (mm: number, of: number) => `${(100 * mm * picture.perMm) / of}%`;
      handle.style.left = `${(100 * (picture.x + at.left * picture.perMm)) / picture.width}%`;
      handle.style.top = `${(100 * (picture.y + at.top * picture.perMm)) / picture.height}%`;
      handle.style.width = percent(at.width || leastMm, picture.width);
      handle.style.height = percent(at.height || leastMm, picture.height);
      // An element that is moved in the document would lose the focus.
      if (handle.parentElement !== stage.frame) {
        const hadFocus = document.activeElement === handle;
        stage.frame.append(handle);
        if (hadFocus) handle.focus({ preventScroll: true });
      }
      return handle;
    },
    handleOf: (record) => handles.get(record),
    suggestButton: (surface) => stages.get(surface)?.button,
    under(x, y) {
      for (const [on, stage] of stages) {
        const box = stage.frame.getBoundingClientRect();
        if (x < box.left || x > box.right || y < box.top || y > box.bottom) continue;
        const { picture } = stage.surface;
        const scale = scaleOf(stage);
        return {
          on,
          left: ((x - box.left) / scale - picture.x) / picture.perMm,
          top: ((y - box.top) / scale - picture.y) / picture.perMm,
        };
      }
      return undefined;
    },
    mmPerPixel(surface) {
      const stage = stages.get(surface);
      return stage ? 1 / (scaleOf(stage) * stage.surface.picture.perMm) : 1;
    },
  };
}
