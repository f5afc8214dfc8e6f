import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Position, Range } from "vscode-languageserver-types";
import type { CheckedPlan, SourceRange } from "../evaluate/checked-plan.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { type Carrying, carryBetween, type Stretch } from "./carried-place.ts";

/**
 * A checked plan against the editor's current texts. The one place that converts between offsets of checked texts and the
 * protocol's positions; every feature uses it, so none can show a number against a text it was not computed from.
 */
export interface PlanInView {
  readonly plan: CheckedPlan;
  /** False: some text is newer than the plan, which is "as of the last complete text". */
  readonly current: boolean;
  /** The current place of a range of the checked text; undefined if something in it was edited, or the file is gone. */
  range(place: SourceRange): Range | undefined;
  /** The same for a range whose inside may be edited, such as a whole circuit. */
  span(place: SourceRange): Range | undefined;
  /** The offset in the checked text for a position of the editor's text. */
  offset(uri: Uri, position: Position): number | undefined;
  /** The checked text at a place. */
  textAt(place: SourceRange): string | undefined;
  /** A file's URI as the client writes it, and its version there; null if it is not open. */
  client(uri: Uri): { readonly uri: string; readonly version: number | null };
}

/** Texts by uri. */
type Texts = (uri: Uri) => TextDocument | undefined;

export interface ViewInput {
  readonly plan: CheckedPlan;
  /** The texts that the plan was computed from. */
  readonly checked: Texts;
  /** The current texts. */
  readonly now: Texts;
  client(uri: Uri): { readonly uri: string; readonly version: number | null };
}

export function viewPlan({ plan, checked, now, client }: ViewInput): PlanInView {
  const carryings = new Map<Uri, Carrying | undefined>();
  const carrying = (uri: Uri): Carrying | undefined => {
    if (!carryings.has(uri)) {
      const [older, newer] = [checked(uri), now(uri)];
      carryings.set(uri, older && newer && carryBetween(older.getText(), newer.getText()));
    }
    return carryings.get(uri);
  };
  const toRange = (uri: Uri, stretch: Stretch | undefined): Range | undefined => {
    const document = now(uri);
    if (!document || !stretch) return undefined;
    return { start: document.positionAt(stretch.start), end: document.positionAt(stretch.end) };
  };
  return {
    plan,
    client,
    get current() {
      return [...plan.snapshot.keys()].every((uri) => checked(uri)?.getText() === now(uri)?.getText());
    },
    range: ({ uri, start, end }) => toRange(uri, carrying(uri)?.whole(start, end)),
    span: ({ uri, start, end }) => toRange(uri, carrying(uri)?.spanning(start, end)),
    offset(uri, position) {
      const document = now(uri);
      return document && carrying(uri)?.back(document.offsetAt(position));
    },
    textAt: ({ uri, start, end }) => checked(uri)?.getText().slice(start, end),
  };
}
