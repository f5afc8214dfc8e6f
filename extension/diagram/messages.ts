import type { Diagram, DiagramElement, DiagramParams, Picture } from "../../server/language/messages.ts";

// The messages between the panel's two ends: the extension (host), which knows the plan, and the page in the webview, which only
// draws. Every message is about one picture and names its number; the picture's message carries the versions of the texts that it
// was computed from.

export type ToPage = ShowDiagram | ShowCursor | ShowTrouble;

/** Replaces the content of the page. */
export interface ShowDiagram {
  readonly type: "diagram";
  /** Increases with every one sent to a page. */
  readonly number: number;
  /** Root file of the plan. The page keeps it, to let its panel be filled again after a reload. */
  readonly root: string;
  readonly versions: Diagram["versions"];
  readonly title: string;
  readonly current: boolean;
  readonly notes: readonly string[];
  readonly view: DiagramParams["view"];
  readonly colours: boolean;
  readonly scenarios: readonly string[];
  readonly scenario?: string;
  readonly picture?: ShownPicture;
}

interface ShownPicture extends Omit<Picture, "elements"> {
  readonly elements: readonly ShownElement[];
}

/** The page receives no source locations, only whether an element has one. */
export interface ShownElement extends Omit<DiagramElement, "location"> {
  readonly written: boolean;
}

/** The cursor in the text is on these elements; on none of them if empty. */
interface ShowCursor {
  readonly type: "cursor";
  readonly number: number;
  readonly elements: readonly string[];
}

/** Why the picture does not follow the text just now. It remains as it was. */
interface ShowTrouble {
  readonly type: "trouble";
  readonly number: number;
  readonly message: string;
}

export type FromPage =
  /** The page is loaded and still empty. */
  | { readonly type: "ready" }
  /** Show where an element is written; with `take`, the text also takes the focus. */
  | { readonly type: "goTo"; readonly number: number; readonly element: string; readonly take: boolean }
  /** Draw another view or edition, or the figures of another scenario; "" for none. */
  | {
      readonly type: "choose";
      readonly number: number;
      readonly view: DiagramParams["view"];
      readonly scenario: string;
      readonly colours: boolean;
    }
  /** Write the drawing, the lists, the labels or the report. */
  | { readonly type: "export"; readonly number: number }
  /** Give the focus back to the text. */
  | { readonly type: "leave"; readonly number: number }
  /** The picture was not shown, because it contains something that none of our pictures has. */
  | { readonly type: "refused"; readonly number: number; readonly why: string };

/** Messages from a page are untrusted: undefined unless the message has exactly this shape. */
export function readFromPage(said: unknown): FromPage | undefined {
  if (typeof said !== "object" || said === null) return undefined;
  const { type, number, element, take, view, scenario, colours, why } = said as Record<string, unknown>;
  if (type === "ready") return { type };
  if (!Number.isSafeInteger(number)) return undefined;
  const of = number as number;
  if (type === "leave" || type === "export") return { type, number: of };
  if (type === "goTo" && isShort(element) && typeof take === "boolean") {
    return { type, number: of, element, take };
  }
  if (type === "choose" && isView(view) && isShort(scenario) && typeof colours === "boolean")
    return { type, number: of, view, scenario, colours };
  if (type === "refused" && isShort(why)) return { type, number: of, why };
  return undefined;
}

export function isView(value: unknown): value is DiagramParams["view"] {
  return value === "one-line" || value === "wiring";
}

/** Names in plans are cut far below this length. */
function isShort(value: unknown): value is string {
  return typeof value === "string" && value.length <= 10_000;
}
