/**
 * The position of a picture behind its window: arithmetic only. `x` and `y` are the picture's point at the window's top left
 * corner, in units of the picture, which need not begin at 0; `scale` is screen pixels for each unit.
 */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box extends Point, Size {}

/** The whole picture in the middle of the window, never larger than drawn. */
export function whole(picture: Box, window: Size): Place {
  const room = { width: window.width - 2 * marginPx, height: window.height - 2 * marginPx };
  const scale = bounded(1, Math.min(room.width / picture.width, room.height / picture.height));
  return {
    scale,
    x: picture.x + (picture.width - window.width / scale) / 2,
    y: picture.y + (picture.height - window.height / scale) / 2,
  };
}

/**
 * The place at which a picture opens: all of it if its text is then readable, else as much as is readable, beginning at a box.
 *
 * @param textPx the size of its smallest words, in units of the picture
 */
export function opening(picture: Box, window: Size, textPx: number, begin: Box | undefined): Place {
  const fitted = whole(picture, window);
  const scale = leastTextPx / textPx;
  if (fitted.scale >= scale) return fitted;
  const from = begin ?? picture;
  const margin = marginPx / scale;
  // The begin is at the left edge, where reading starts, half way down.
  const x = from.x - margin;
  const y = from.y + from.height / 2 - window.height / scale / 2;
  return heldInside({ scale, x, y }, picture, window);
}

/** No further past an edge of the picture than its margin; a picture smaller than the window is in the middle. */
function heldInside(place: Place, picture: Box, window: Size): Place {
  const margin = marginPx / place.scale;
  const along = (from: number, start: number, length: number, windowPx: number) => {
    const seen = windowPx / place.scale;
    if (length + 2 * margin <= seen) return start + (length - seen) / 2;
    return Math.min(Math.max(from, start - margin), start + length + margin - seen);
  };
  return {
    scale: place.scale,
    x: along(place.x, picture.x, picture.width, window.width),
    y: along(place.y, picture.y, picture.height, window.height),
  };
}

/** Words that are smaller cannot be read at once. */
const leastTextPx = 9;

/**
 * Larger (`factor` above 1) or smaller, while one point of the window, in pixels, keeps showing the same point of the picture.
 */
export function zoomed(place: Place, factor: number, still: Point): Place {
  const scale = bounded(largestScale, place.scale * factor);
  const change = 1 / place.scale - 1 / scale;
  return { scale, x: place.x + still.x * change, y: place.y + still.y * change };
}

/** Moved as if the picture were pushed by that many pixels, but always with part of it visible. */
export function moved(place: Place, byPx: Point, picture: Box, window: Size): Place {
  return inSight(
    { ...place, x: place.x - byPx.x / place.scale, y: place.y - byPx.y / place.scale },
    picture,
    window,
  );
}

/** The nearest place with a good part of the picture in the window. */
export function inSight(place: Place, picture: Box, window: Size): Place {
  const piece = (length: number) => Math.min(length, leastPx / place.scale);
  const clamp = (from: number, start: number, length: number, windowPx: number) =>
    Math.min(Math.max(from, start + piece(length) - windowPx / place.scale), start + length - piece(length));
  return {
    scale: place.scale,
    x: clamp(place.x, picture.x, picture.width, window.width),
    y: clamp(place.y, picture.y, picture.height, window.height),
  };
}

/** The same place if a box is already in the window, else the nearest one that contains it, with a margin around it. */
export function showing(place: Place, box: Box, window: Size): Place {
  if (shows(place, box, window)) return place;
  const margin = marginPx / place.scale;
  const along = (from: number, start: number, length: number, windowPx: number) => {
    const room = windowPx / place.scale - 2 * margin;
    // A box larger than the window begins at its edge.
    if (length > room || start - margin < from) return start - margin;
    return Math.max(from, start + length + margin - windowPx / place.scale);
  };
  return {
    scale: place.scale,
    x: along(place.x, box.x, box.width, window.width),
    y: along(place.y, box.y, box.height, window.height),
  };
}

/** Whether all of a box can be in the window at once. */
export function fits({ scale }: Place, { width, height }: Size, window: Size): boolean {
  const roomFor = (lengthPx: number) => (lengthPx - 2 * marginPx) / scale;
  return width <= roomFor(window.width) && height <= roomFor(window.height);
}

/** Whether a box, or as much of it as possible, is in the window. */
export function shows(place: Place, box: Box, window: Size): boolean {
  const inside = (from: number, start: number, length: number, windowPx: number) => {
    const seen = windowPx / place.scale;
    return length > seen
      ? start < from + seen && start + length > from
      : start >= from && start + length <= from + seen;
  };
  return inside(place.x, box.x, box.width, window.width) && inside(place.y, box.y, box.height, window.height);
}

/**
 * The same scale; the middle of `before` in the old picture and of `after` in the new one are at the same point of the window.
 */
export function heldStill(place: Place, before: Box, after: Box): Place {
  const middle = ({ x, y, width, height }: Box) => ({ x: x + width / 2, y: y + height / 2 });
  const [from, to] = [middle(before), middle(after)];
  return { scale: place.scale, x: place.x + to.x - from.x, y: place.y + to.y - from.y };
}

/** The point of the picture in the middle of the window. */
export function middleOf(place: Place, window: Size): Point {
  return { x: place.x + window.width / place.scale / 2, y: place.y + window.height / place.scale / 2 };
}

/** Between two places, `share` of the way from the first (0) to the second (1). */
export function between(from: Place, to: Place, share: number): Place {
  const at = (one: number, other: number) => one + (other - one) * share;
  return { x: at(from.x, to.x), y: at(from.y, to.y), scale: at(from.scale, to.scale) };
}

/** Around the whole picture, and around a box brought into the window. */
const marginPx = 16;
/** This much of the picture remains in the window, however far it is pushed. */
const leastPx = 64;
const largestScale = 8;
const smallestScale = 0.05;

function bounded(largest: number, scale: number): number {
  return Math.min(largest, Math.max(smallestScale, scale));
}
