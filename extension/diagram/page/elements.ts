import type { ShownElement } from "../messages.ts";
import type { Box } from "../place.ts";
import { svgNamespace } from "./picture.ts";

/** The parts, conductors and devices of the shown picture, as selectable elements. */
export interface Elements {
  /** Connects the groups of a new picture to their elements. The focused element keeps the focus. */
  adopt(picture: SVGSVGElement, elements: readonly ShownElement[]): void;
  /** Puts the frames around the elements on the screen: only there can their words be measured. */
  frame(): void;
  element(id: string): ShownElement | undefined;
  /** The point at which the line of a conductor begins; undefined for parts and devices. */
  begin(id: string): Box | undefined;
  /** The area of an element with its words, in the coordinates of the picture. */
  box(id: string): Box | undefined;
  all(): readonly ShownElement[];
  /** The one whose details are shown. */
  chosen(): string | undefined;
  choose(id: string | undefined): void;
  /** Marks the elements under the cursor in the text. */
  mark(ids: readonly string[]): void;
  marked(): readonly string[];
  /** Moves the focus to one. */
  focus(id: string): void;
  /** The one that has the focus. */
  focused(): string | undefined;
  /** `by` further in reading order; undefined past either end. */
  neighbour(id: string, by: number): ShownElement | undefined;
}

export function createElements(): Elements {
  let all: readonly ShownElement[] = [];
  let groups = new Map<string, SVGGElement>();
  /** Of parts and devices, as measured on the screen. */
  let boxes = new Map<string, Box>();
  let chosen: string | undefined;
  let marked: ReadonlySet<string> = new Set();

  const look = (): void => {
    for (const [id, group] of groups) {
      group.classList.toggle("chosen", id === chosen);
      group.classList.toggle("marked", marked.has(id));
    }
    // One Tab stop for the whole picture: the chosen element, else the first.
    const stop =
      chosen !== undefined && groups.has(chosen) ? chosen : all.find(({ id }) => groups.has(id))?.id;
    for (const [id, group] of groups) group.setAttribute("tabindex", id === stop ? "0" : "-1");
  };
  const focused = (): string | undefined => groupAround(document.activeElement)?.dataset.element;

  return {
    adopt(picture, elements) {
      all = elements;
      groups = new Map();
      const byId = new Map(elements.map((element) => [element.id, element]));
      for (const group of picture.querySelectorAll<SVGGElement>("g[data-element]")) {
        const element = byId.get(group.dataset.element ?? "");
        if (!element || groups.has(element.id)) continue;
        groups.set(element.id, group);
        makeButton(group, element);
      }
      inReadingOrder(elements.flatMap(({ id }) => groups.get(id) ?? []));
      if (chosen !== undefined && !byId.has(chosen)) chosen = undefined;
      look();
    },
    frame() {
      const framed = [...groups].filter(([, group]) => !group.classList.contains("of-conductor"));
      // Measures all of them first, then draws all of them: the browser lays the picture out once.
      boxes = new Map(framed.map(([id, group]) => [id, group.getBBox()]));
      for (const [id, group] of framed) group.prepend(frameAround(boxes.get(id)!));
    },
    box: (id) => boxes.get(id) ?? all.find((element) => element.id === id)?.box,
    element: (id) => all.find((element) => element.id === id),
    begin(id) {
      const group = groups.get(id);
      const line = group?.classList.contains("of-conductor") ? linesOf(group)[0] : undefined;
      const point = line?.getPointAtLength(0);
      return point && { x: point.x, y: point.y, width: 0, height: 0 };
    },
    all: () => all,
    chosen: () => chosen,
    choose(id) {
      chosen = id;
      look();
    },
    mark(ids) {
      marked = new Set(ids);
      look();
    },
    marked: () => [...marked],
    focus: (id) => groups.get(id)?.focus({ preventScroll: true }),
    focused,
    neighbour(id, by) {
      const at = all.findIndex((element) => element.id === id);
      return at < 0 ? undefined : all[at + by];
    },
  };
}

/** The group of the element that an event target belongs to. */
export function groupAround(target: EventTarget | null): SVGGElement | undefined {
  return target instanceof Element
    ? (target.closest<SVGGElement>("g[data-element]") ?? undefined)
    : undefined;
}

function makeButton(group: SVGGElement, { name, description, findings, kind }: ShownElement): void {
  group.setAttribute("role", "button");
  // Its title is its name, also as a tooltip; the text inside it contains more than the name.
  const title = document.createElementNS(svgNamespace, "title");
  title.textContent = name;
  for (const old of group.querySelectorAll(":scope > :is(title, desc)")) old.remove();
  const unsaid = findings.filter((finding) => !description.includes(finding));
  group.setAttribute("aria-description", [description, ...unsaid].join(" "));
  group.classList.add("element", `of-${kind}`);
  group.prepend(title, ...(kind === "conductor" ? linesOf(group).map(haloOf) : []));
}

/** Screen readers follow the order of the page's elements. */
function inReadingOrder(ordered: readonly SVGGElement[]): void {
  for (const group of ordered) group.parentNode?.append(group);
}

function linesOf(group: SVGGElement): SVGGeometryElement[] {
  return [...group.querySelectorAll<SVGGeometryElement>("path, polyline, line")];
}

/** A conductor is a thin line. Its halo is wide enough to click, and shows that it is chosen. */
function haloOf(line: SVGElement): SVGElement {
  const halo = line.cloneNode(false) as SVGElement;
  for (const { name } of [...halo.attributes]) {
    if (!outlines.has(name)) halo.removeAttribute(name);
  }
  halo.setAttribute("class", "halo");
  return halo;
}

const outlines = new Set(["d", "points", "x1", "y1", "x2", "y2", "transform"]);

function frameAround({ x, y, width, height }: Box): SVGElement {
  const frame = document.createElementNS(svgNamespace, "rect");
  const sides = {
    x: x - frameGap,
    y: y - frameGap,
    width: width + 2 * frameGap,
    height: height + 2 * frameGap,
  };
  for (const [name, value] of Object.entries(sides)) frame.setAttribute(name, String(value));
  frame.setAttribute("rx", "3");
  frame.setAttribute("class", "frame");
  return frame;
}

const frameGap = 3;
