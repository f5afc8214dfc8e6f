import type { DiagramParams } from "../../server/language/messages.ts";
import { isView } from "./messages.ts";
import type { Place } from "./place.ts";

/** The state that the editor keeps for a hidden panel, and over a reload of the window. */
export interface PanelState {
  /** Root file of the plan. */
  readonly uri: string;
  readonly view: DiagramParams["view"];
  /** "" for none. */
  readonly scenario: string;
  /** Conductors are in the colours of their insulation. */
  readonly colours: boolean;
  /** "all": the whole picture is in the window, at any window size. Absent: as it opens. */
  readonly place?: Place | "all";
}

export const firstView: DiagramParams["view"] = "one-line";

/** The kept state may be damaged, or from another version. Unusable values are treated as never chosen. */
export function readPanelState(kept: unknown): PanelState {
  const { uri, view, scenario, colours, place } = (
    typeof kept === "object" && kept !== null ? kept : {}
  ) as Record<string, unknown>;
  return {
    uri: typeof uri === "string" ? uri : "",
    view: isView(view) ? view : firstView,
    scenario: typeof scenario === "string" ? scenario : "",
    colours: colours === true,
    ...(place === "all" ? { place } : {}),
    ...(isPlace(place) ? { place: { x: place.x, y: place.y, scale: place.scale } } : {}),
  };
}

function isPlace(value: unknown): value is Place {
  if (typeof value !== "object" || value === null) return false;
  const { x, y, scale } = value as Record<string, unknown>;
  return Number.isFinite(x) && Number.isFinite(y) && Number.isFinite(scale) && (scale as number) > 0;
}
