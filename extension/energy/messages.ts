import type { EnergyView, LeverMove } from "../../server/language/messages.ts";

// The messages between the two ends of the view of energy: the extension (host), which knows the plan, and the page, which draws the
// data that it is given. A change that the page wants is a proposed move of a lever; the host asks the server for its edits.

export type ToPage = ShowEnergy | SaySomething;

/** Replaces the content of the page. */
export interface ShowEnergy {
  readonly type: "energy";
  /** Increases with every one that is sent to a page. */
  readonly number: number;
  /** Root file of the plan. The page keeps it, to let its view be filled again after a reload. */
  readonly root: string;
  readonly energy: EnergyView;
  /** The figures are those with this lever moved; absent: those of the text. */
  readonly moved?: LeverMove;
}

/** `action`: the outcome of the last one. `figures`: the reason why they do not follow the text just now. */
interface SaySomething {
  readonly type: "say";
  readonly about: "action" | "figures";
  readonly message: string;
}

export type FromPage =
  /** The page is loaded and still empty. */
  | { readonly type: "ready" }
  | { readonly type: "choose"; readonly period: string; readonly bank: number; readonly month: number }
  /** A lever moves: show the figures, change nothing. */
  | { readonly type: "move"; readonly lever: string; readonly value: number }
  /** It was let go: write it. `number` is that of the figures that it belongs to. */
  | { readonly type: "letGo"; readonly number: number; readonly lever: string; readonly value: number }
  /** It was let go where it was. */
  | { readonly type: "leaveAsIs" }
  /** Whether the least single changes are in sight. */
  | { readonly type: "least"; readonly wanted: boolean }
  | { readonly type: "undo" }
  | { readonly type: "redo" }
  /** Give the focus back to the text. */
  | { readonly type: "leave" }
  /** The chart was not shown, because it contains something that none of ours has. */
  | { readonly type: "refused"; readonly why: string };

/** Messages from a page are untrusted: undefined unless the message has exactly this shape. */
export function readFromPage(said: unknown): FromPage | undefined {
  if (typeof said !== "object" || said === null) return undefined;
  const { type, period, bank, month, number, lever, value, wanted, why } = said as Record<string, unknown>;
  switch (type) {
    case "ready":
    case "leaveAsIs":
    case "undo":
    case "redo":
    case "leave":
      return { type };
    case "choose":
      return isShort(period) && isPlace(bank) && isPlace(month) ? { type, period, bank, month } : undefined;
    case "move":
      return isShort(lever) && Number.isFinite(value) ? { type, lever, value: value as number } : undefined;
    case "letGo":
      return isShort(lever) && Number.isFinite(value) && isPlace(number)
        ? { type, number, lever, value: value as number }
        : undefined;
    case "least":
      return typeof wanted === "boolean" ? { type, wanted } : undefined;
    case "refused":
      return isShort(why) ? { type, why } : undefined;
    default:
      return undefined;
  }
}

/** Names in plans are cut far below this length. */
function isShort(value: unknown): value is string {
  return typeof value === "string" && value.length <= 10_000;
}

function isPlace(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0;
}

/** The state that the editor keeps for a hidden page, and over a reload of the window. */
export interface ViewState {
  /** Root file of the plan. */
  readonly uri: string;
  /** "" for the first. */
  readonly period: string;
  readonly bank: number;
  /** From 0; undefined for the worst. */
  readonly month?: number;
}

/** The kept state may be damaged, or from another version. Unusable values are treated as never chosen. */
export function readViewState(kept: unknown): ViewState {
  const { uri, period, bank, month } = (typeof kept === "object" && kept !== null ? kept : {}) as Record<
    string,
    unknown
  >;
  return {
    uri: isShort(uri) ? uri : "",
    period: isShort(period) ? period : "",
    bank: isPlace(bank) ? bank : 0,
    ...(isPlace(month) && month < 12 ? { month } : {}),
  };
}
