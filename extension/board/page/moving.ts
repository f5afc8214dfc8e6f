import type { BoardPart, BoardSurface, QuarterTurn, TriedPlace } from "../../../server/language/messages.ts";
import { firstFree, inUnit, snapped, stepOf } from "../snapping.ts";
import type { Handles, Spot } from "./handles.ts";

/** The part that is away from its place in the text. */
export interface Moving {
  /** Record of the part that moves; undefined: none does. */
  record(): number | undefined;
  /** A drag begins at a point of the window, on the handle of a part or on its name in the list. */
  grab(part: BoardPart, event: PointerEvent): void;
  /** Moves it by a step, or begins to. */
  step(part: BoardPart, across: number, down: number): void;
  turn(part: BoardPart): void;
  /** Moves it to the first free place on the surface after its own. */
  toNextSurface(part: BoardPart): void;
  /** Puts a part without a place on a surface, at the first free place there; it then moves until it is written. */
  putOn(part: BoardPart, surface: number): void;
  write(): void;
  giveUp(): void;
  /** The pointer holds it. */
  isHeld(): boolean;
  /** Back to the text, without a word to the host. */
  settle(): void;
  /** Draws the handle of the moving part where it is now. */
  redraw(): void;
}

interface MovingWiring {
  readonly handles: Handles;
  surfaces(): readonly BoardSurface[];
  parts(): readonly BoardPart[];
  move(places: readonly TriedPlace[]): void;
  letGo(places: readonly TriedPlace[]): void;
  leaveAsIs(): void;
  /** A click without a drag. */
  clicked(part: BoardPart): void;
  /** The reason why a part cannot be moved. */
  say(message: string): void;
}

interface State {
  readonly part: BoardPart;
  readonly on: number;
  /** mm, of the outline as it is turned. */
  readonly left: number;
  readonly top: number;
  readonly turnedDeg: QuarterTurn;
}

/** Pixels that a pointer may tremble in a click. */
const trembling = 4;
/** Pixels within which a part snaps to a neighbour. */
const reachPixels = 7;

export function createMoving(wiring: MovingWiring): Moving {
  const { handles } = wiring;
  let state: State | undefined;
  let held: { readonly part: BoardPart; readonly x: number; readonly y: number; drags: boolean } | undefined;
  /** From the pointer to the corner of the outline, mm. */
  let grip = { left: 0, top: 0 };
  let asked = 0;

  const sizeOf = ({ part: { size }, turnedDeg }: Pick<State, "part" | "turnedDeg">) => {
    const { width, height } = size ?? { width: 0, height: 0 };
    return turnedDeg % 180 === 0 ? { width, height } : { width: height, height: width };
  };
  const spotOf = (of: State): Spot => ({ on: of.on, left: of.left, top: of.top, ...sizeOf(of) });
  const surfaceOf = (on: number) => wiring.surfaces().find(({ record }) => record === on);
  const unitOf = ({ part, on }: Pick<State, "part" | "on">) => part.unit ?? surfaceOf(on)?.unit ?? "mm";
  const around = ({ part, on }: Pick<State, "part" | "on">) => ({
    surface: surfaceOf(on) ?? { width: 0, height: 0 },
    others: wiring
      .parts()
      .flatMap(({ record, place }) => (place && place.on === on && record !== part.record ? [place] : [])),
    step: stepOf(unitOf({ part, on })),
  });
  const placesOf = (of: State): readonly TriedPlace[] => {
    const unit = unitOf(of);
    const { part, on, turnedDeg } = of;
    return [{ record: part.record, on, left: inUnit(of.left, unit), top: inUnit(of.top, unit), turnedDeg }];
  };
  const inText = (part: BoardPart): State | undefined =>
    part.place && { part, ...part.place, turnedDeg: part.place.turnedDeg };
  const isInText = (of: State): boolean => {
    const was = inText(of.part);
    return was !== undefined && JSON.stringify(placesOf(was)) === JSON.stringify(placesOf(of));
  };
  const atFreePlace = (of: Pick<State, "part" | "on" | "turnedDeg">): State => {
    const { left, top } = firstFree(sizeOf(of), around(of));
    return { ...of, left, top };
  };

  const to = (next: State): void => {
    state = next;
    redraw();
    // One request for each picture of the screen is enough.
    if (asked === 0)
      asked = requestAnimationFrame(() => {
        asked = 0;
        if (state) wiring.move(placesOf(state));
      });
  };
  const redraw = (): void => {
    if (state) handles.put(state.part, spotOf(state))?.classList.add("moving");
  };
  const settle = (): void => {
    const was = state;
    state = undefined;
    held = undefined;
    if (asked !== 0) cancelAnimationFrame(asked);
    asked = 0;
    if (!was) return;
    const now = wiring.parts().find(({ record }) => record === was.part.record);
    if (now) handles.put(now, now.place)?.classList.remove("moving");
  };
  const giveUp = (): void => {
    settle();
    wiring.leaveAsIs();
  };
  const write = (): void => {
    if (!state) return;
    if (isInText(state)) {
      giveUp();
      return;
    }
    if (asked !== 0) cancelAnimationFrame(asked);
    asked = 0;
    held = undefined;
    wiring.letGo(placesOf(state));
  };
  /** The state to go on from; undefined if it may not be moved, which is said. */
  const from = (part: BoardPart): State | undefined => {
    if (part.fixed !== undefined) {
      wiring.say(part.fixed);
      return undefined;
    }
    return state?.part.record === part.record ? state : inText(part);
  };

  const dragTo = ({ clientX, clientY }: PointerEvent): void => {
    const { part } = held!;
    const point = handles.under(clientX, clientY);
    if (!point) return;
    const turnedDeg = state?.turnedDeg ?? part.place?.turnedDeg ?? 0;
    const free = { left: point.left - grip.left, top: point.top - grip.top, ...sizeOf({ part, turnedDeg }) };
    const there = snapped(free, around({ part, on: point.on }), reachPixels * handles.mmPerPixel(point.on));
    to({ part, on: point.on, left: there.left, top: there.top, turnedDeg });
  };
  const released = (event: PointerEvent): void => {
    stopListening();
    if (!held) return;
    const { part, drags } = held;
    held = undefined;
    if (event.type === "pointercancel") giveUp();
    else if (drags) write();
    else wiring.clicked(part);
  };
  const dragged = (event: PointerEvent): void => {
    if (!held) return;
    if (!held.drags) {
      if (Math.hypot(event.clientX - held.x, event.clientY - held.y) < trembling) return;
      const { fixed } = held.part;
      if (fixed !== undefined) {
        held = undefined;
        stopListening();
        wiring.say(fixed);
        return;
      }
      held.drags = true;
    }
    dragTo(event);
  };
  const stopListening = (): void => {
    removeEventListener("pointermove", dragged);
    removeEventListener("pointerup", released);
    removeEventListener("pointercancel", released);
  };

  return {
    record: () => state?.part.record,
    isHeld: () => held?.drags ?? false,
    grab(part, event) {
      if (event.button !== 0) return;
      if (state && state.part.record !== part.record) giveUp();
      held = { part, x: event.clientX, y: event.clientY, drags: false };
      const point = handles.under(event.clientX, event.clientY);
      const at = state ?? inText(part);
      const { width, height } = sizeOf({ part, turnedDeg: at?.turnedDeg ?? 0 });
      grip =
        point && at && at.on === point.on
          ? { left: point.left - at.left, top: point.top - at.top }
          : { left: width / 2, top: height / 2 };
      addEventListener("pointermove", dragged);
      addEventListener("pointerup", released);
      addEventListener("pointercancel", released);
    },
    step(part, across, down) {
      const at = from(part);
      if (!at) return;
      const step = stepOf(unitOf(at));
      to({ ...at, left: Math.max(0, at.left + across * step), top: Math.max(0, at.top + down * step) });
    },
    turn(part) {
      const at = from(part);
      if (at) to({ ...at, turnedDeg: ((at.turnedDeg + 90) % 360) as QuarterTurn });
    },
    toNextSurface(part) {
      const at = from(part);
      if (!at) return;
      const surfaces = wiring.surfaces();
      const next = surfaces[(surfaces.findIndex(({ record }) => record === at.on) + 1) % surfaces.length];
      if (!next || next.record === at.on) return wiring.say("The plan has no other board.");
      to(atFreePlace({ ...at, on: next.record }));
    },
    putOn(part, surface) {
      if (part.fixed !== undefined) return wiring.say(part.fixed);
      if (state) giveUp();
      to(atFreePlace({ part, on: surface, turnedDeg: 0 }));
      handles.handleOf(part.record)?.focus();
    },
    ...{ write, giveUp, settle, redraw },
  };
}
