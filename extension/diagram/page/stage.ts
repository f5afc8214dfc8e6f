import {
  type Box,
  between,
  fits,
  inSight,
  middleOf,
  moved,
  opening,
  type Place,
  type Point,
  type Size,
  showing,
  shows,
  whole,
  zoomed,
} from "../place.ts";

/** The viewport of a picture: the visible part, and its scale. */
export interface Stage {
  /** Replaces the previous picture in one step. Without a place it opens readable, at any window size. */
  show(picture: SVGSVGElement, place: Place | "all" | undefined): void;
  /** The box, in units of the picture, at which it begins as it opens. */
  beginAt(box: Box | undefined): void;
  clear(): void;
  /** "all": the whole picture is in the window, at any window size. Undefined: as it opened. */
  place(): Place | "all" | undefined;
  /** Screen pixels for each unit of the picture. */
  scale(): number;
  /** Whether a box, in units of the picture, is visible. */
  sees(box: Box): boolean;
  /**
   * Brings a box into the window, smoothly and no further than necessary; not while the user is moving the picture. One that is too
   * large may be empty at its edge, as that of a line with a corner is: `begin` is shown of it.
   */
  reveal(box: Box, begin?: Box): void;
  /** The point of the picture in the middle of the window. */
  middle(): Point;
  /** Moves the picture by so many pixels. */
  push(byPx: Point): void;
  /** About the middle of the window. */
  zoom(factor: number): void;
  showAll(): void;
}

/** @param placed called when the user moved or scaled the picture */
export function createStage(element: HTMLElement, placed: (place: Place | "all") => void): Stage {
  let picture: SVGSVGElement | undefined;
  /** The area of its plane that the picture covers. */
  let size: Box = { x: 0, y: 0, width: 1, height: 1 };
  let chosen: Place | "all" | undefined;
  let begin: Box | undefined;
  let textPx = 1;
  let gliding = 0;
  /** Time of the last turn of the wheel, ms. The clock of a page begins at 0 when the page does. */
  let wheeling = Number.NEGATIVE_INFINITY;
  const pointers = new Map<number, Point>();

  const window = (): Size => ({ width: element.clientWidth || 1, height: element.clientHeight || 1 });
  const current = (): Place => {
    if (chosen === "all") return whole(size, window());
    return chosen ?? opening(size, window(), textPx, begin);
  };

  const draw = (): void => {
    if (!picture) return;
    const { x, y, scale } = current();
    const { width, height } = window();
    picture.setAttribute("viewBox", `${x} ${y} ${width / scale} ${height / scale}`);
  };
  const put = (place: Place | "all"): void => {
    cancelAnimationFrame(gliding);
    chosen = place;
    draw();
    placed(place);
  };
  const push = (byPx: Point): void => put(moved(current(), byPx, size, window()));
  const scaleBy = (factor: number, still: Point): void =>
    put(inSight(zoomed(current(), factor, still), size, window()));
  const middlePx = (): Point => ({ x: window().width / 2, y: window().height / 2 });

  const glide = (to: Place): void => {
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) {
      put(to);
      return;
    }
    const from = current();
    const start = performance.now();
    const step = (now: number): void => {
      const share = Math.min(1, Math.max(0, (now - start) / glideMs));
      put(between(from, to, share * (2 - share)));
      if (share < 1) gliding = requestAnimationFrame(step);
    };
    cancelAnimationFrame(gliding);
    gliding = requestAnimationFrame(step);
  };

  new ResizeObserver(draw).observe(element);

  const at = ({ clientX, clientY }: MouseEvent): Point => {
    const { left, top } = element.getBoundingClientRect();
    return { x: clientX - left, y: clientY - top };
  };
  element.addEventListener(
    "wheel",
    (event) => {
      if (!picture) return;
      event.preventDefault();
      wheeling = performance.now();
      // A pinch on a touchpad arrives as a wheel event with Control.
      if (event.ctrlKey || event.metaKey) scaleBy(Math.exp(-event.deltaY * zoomForPx(event)), at(event));
      else {
        const px = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? lineInPx : 1;
        const [x, y] =
          event.shiftKey && event.deltaX === 0 ? [event.deltaY, 0] : [event.deltaX, event.deltaY];
        push({ x: -x * px, y: -y * px });
      }
    },
    { passive: false },
  );
  element.addEventListener("pointerdown", (event) => {
    if (event.button === 0) pointers.set(event.pointerId, at(event));
  });
  element.addEventListener("pointermove", (event) => {
    const before = pointers.get(event.pointerId);
    if (!before || !picture) return;
    const now = at(event);
    const moving = element.hasPointerCapture(event.pointerId);
    if (!moving && distance(before, now) < stillPx) return;
    // Captured only now: a press without a move is still a click on the element below.
    if (!moving) element.setPointerCapture(event.pointerId);
    const [other] = [...pointers].flatMap(([id, point]) => (id === event.pointerId ? [] : [point]));
    pointers.set(event.pointerId, now);
    if (other) scaleBy(distance(other, now) / (distance(other, before) || 1), other);
    else push({ x: now.x - before.x, y: now.y - before.y });
  });
  for (const end of ["pointerup", "pointercancel", "lostpointercapture"] as const) {
    element.addEventListener(end, (event) => pointers.delete(event.pointerId));
  }

  return {
    show(next, place) {
      cancelAnimationFrame(gliding);
      picture = next;
      const { x, y, width, height } = next.viewBox.baseVal;
      size = { x, y, width: width || 1, height: height || 1 };
      begin = undefined;
      textPx = smallestWords(next);
      chosen = place && place !== "all" ? inSight(place, size, window()) : place;
      // The element is as large as the window; its viewBox selects the visible part of the picture.
      for (const name of ["width", "height"]) next.setAttribute(name, "100%");
      next.setAttribute("preserveAspectRatio", "xMidYMid meet");
      draw();
      element.replaceChildren(next);
    },
    beginAt(box) {
      begin = box;
      draw();
    },
    clear() {
      picture = undefined;
      element.replaceChildren();
    },
    place: () => chosen,
    scale: () => current().scale,
    sees: (box) => shows(current(), box, window()),
    reveal(box, begin = box) {
      const touched = pointers.size > 0 || performance.now() - wheeling < wheelRestMs;
      const wanted = fits(current(), box, window()) ? box : begin;
      if (!picture || touched || shows(current(), wanted, window())) return;
      glide(showing(current(), wanted, window()));
    },
    middle: () => middleOf(current(), window()),
    push,
    zoom: (factor) => scaleBy(factor, middlePx()),
    showAll: () => put("all"),
  };
}

/** In units of the picture. The single letter of a mark is a sign, not a word. */
function smallestWords(picture: SVGSVGElement): number {
  const sizes = [...picture.querySelectorAll("text")].flatMap((text) => {
    const size = Number(text.getAttribute("font-size"));
    return size > 0 && (text.textContent ?? "").trim().length > 1 ? [size] : [];
  });
  return sizes.length > 0 ? Math.min(...sizes) : 1_000;
}

/** A pointer that has moved less than this does not move the picture. */
const stillPx = 4;
const glideMs = 160;
/** A turn of a wheel is many events; for this long after the last one it still counts as turning. */
const wheelRestMs = 400;
const lineInPx = 20;

/** A notch of a wheel is about 100 px; a pinch comes in steps of a few. */
function zoomForPx({ deltaMode, deltaY }: WheelEvent): number {
  if (deltaMode === WheelEvent.DOM_DELTA_LINE) return 0.05;
  return Math.abs(deltaY) < 50 ? 0.01 : 0.002;
}

function distance(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}
