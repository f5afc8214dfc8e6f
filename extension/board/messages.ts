import type { ArrangementAnswer, BoardsView, TriedPlace } from "../../server/language/messages.ts";

// The messages between the two ends of the view of the boards: the extension (host), which knows the plan, and the page, which draws
// the data that it is given. A change that the page wants is a proposed place of a part; the host asks the server for its edits.

export type ToPage = ShowBoards | ShowCursor | SaySomething | ShowSearch | ShowArrangement;

/** Replaces the content of the page. */
export interface ShowBoards {
  readonly type: "boards";
  /** Increases with every one of the text that is sent to a page. */
  readonly number: number;
  /** Root file of the plan. The page keeps it, to let its view be filled again after a reload. */
  readonly root: string;
  readonly boards: BoardsView;
  /** The view is that with these parts at these places; absent: that of the text. */
  readonly moved?: readonly TriedPlace[];
}

/** The cursor in the text is on these parts or surfaces, by record; on none of them if empty. */
interface ShowCursor {
  readonly type: "cursor";
  readonly records: readonly number[];
}

/** `action`: the outcome of the last one. `figures`: the reason why the view does not follow the text just now. */
interface SaySomething {
  readonly type: "say";
  readonly about: "action" | "figures";
  readonly message: string;
}

/** Places on a surface are being looked for. */
interface ShowSearch {
  readonly type: "searching";
  /** Record of the surface. */
  readonly on: number;
  /** A sentence about the progress. */
  readonly message: string;
}

/** The end of a search. */
export interface ShowArrangement {
  readonly type: "arrangement";
  /** Record of the surface. */
  readonly on: number;
  readonly answer: ArrangementAnswer;
}

export type FromPage =
  /** The page is loaded and still empty. */
  | { readonly type: "ready" }
  /** Draw the ways of the conductors, or leave them out. */
  | { readonly type: "choose"; readonly conductors: boolean }
  /** Parts move: show it, and leave the text as it is. */
  | { readonly type: "move"; readonly places: readonly TriedPlace[] }
  /** They were let go: write it. `number` is that of the view that they belong to. */
  | { readonly type: "letGo"; readonly number: number; readonly places: readonly TriedPlace[] }
  /** Look for places on a surface, for the parts that have none. The places are then written by `letGo`. */
  | { readonly type: "suggest"; readonly on: number }
  /** End that search. */
  | { readonly type: "cancel" }
  /** Show where a part is written; with `take`, the text also takes the focus. */
  | { readonly type: "goTo"; readonly record: number; readonly take: boolean }
  /** `leaveAsIs`: they were let go where they were. `leave`: give the focus back to the text. */
  | { readonly type: "leaveAsIs" | "undo" | "redo" | "leave" }
  /** A picture was not shown, because it contains something that none of ours has. */
  | { readonly type: "refused"; readonly why: string };

/** Messages from a page are untrusted: undefined unless the message has exactly this shape. */
export function readFromPage(said: unknown): FromPage | undefined {
  const { type, places, number, record, take, why, conductors, on } = valuesOf(said);
  switch (type) {
    case "ready":
    case "leaveAsIs":
    case "undo":
    case "redo":
    case "leave":
    case "cancel":
      return { type };
    case "suggest":
      return isIndex(on) ? { type, on } : undefined;
    case "choose":
      return typeof conductors === "boolean" ? { type, conductors } : undefined;
    case "move":
    case "letGo": {
      const read = readPlaces(places);
      if (!read) return undefined;
      if (type === "move") return { type, places: read };
      return isIndex(number) ? { type, number, places: read } : undefined;
    }
    case "goTo":
      return isIndex(record) && typeof take === "boolean" ? { type, record, take } : undefined;
    case "refused":
      return typeof why === "string" && why.length <= 10_000 ? { type, why } : undefined;
    default:
      return undefined;
  }
}

/** As many as a plan may have parts on its surfaces. */
const mostPlaces = 1_000;

function readPlaces(given: unknown): readonly TriedPlace[] | undefined {
  if (!Array.isArray(given) || given.length === 0 || given.length > mostPlaces) return undefined;
  const places = given.flatMap((one): TriedPlace[] => {
    const { record, on, left, top, turnedDeg } = valuesOf(one);
    const isWhole = isIndex(record) && isIndex(on) && Number.isFinite(left) && Number.isFinite(top);
    if (!isWhole || !isQuarterTurn(turnedDeg)) return [];
    return [{ record, on, left: left as number, top: top as number, turnedDeg }];
  });
  return places.length === given.length ? places : undefined;
}

function isQuarterTurn(value: unknown): value is TriedPlace["turnedDeg"] {
  return value === 0 || value === 90 || value === 180 || value === 270;
}

function isIndex(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0;
}

function valuesOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
}

/** The state that the editor keeps for a hidden page, and over a reload of the window. */
export interface ViewState {
  /** Root file of the plan. */
  readonly uri: string;
  /** Whether the ways of the conductors are drawn. */
  readonly conductors: boolean;
  /** Of the pictures: as wide as the view, or a multiple of their own size. */
  readonly size: PictureSize;
}

export const pictureSizes = ["fit", "1", "1.5", "2"] as const;
type PictureSize = (typeof pictureSizes)[number];

/** The kept state may be damaged, or from another version. Unusable values are treated as never chosen. */
export function readViewState(kept: unknown): ViewState {
  const { uri, conductors, size } = valuesOf(kept);
  return {
    uri: typeof uri === "string" && uri.length <= 10_000 ? uri : "",
    conductors: conductors === true,
    size: pictureSizes.find((one) => one === size) ?? "fit",
  };
}
