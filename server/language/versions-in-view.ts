import type { TextDocumentIdentifier } from "vscode-languageserver-types";
import type { Edit } from "../evaluate/checked-plan.ts";
import type { TextChange } from "./messages.ts";
import type { PlanInView } from "./plan-in-view.ts";

/** The client's versions of all open files of a plan, by URI as the client writes it. */
export function versionsOf({ plan, client }: PlanInView): Record<string, number> {
  const versions: Record<string, number> = {};
  for (const file of plan.snapshot.keys()) {
    const { uri, version } = client(file);
    if (version !== null) versions[uri] = version;
  }
  return versions;
}

/** Whether a plan was computed from these versions, as far as its files are open. */
export function isOfVersions(
  view: PlanInView,
  versions: readonly (TextDocumentIdentifier & { readonly version: number })[],
): boolean {
  const of = new Map(versions.map(({ uri, version }) => [uri, version]));
  return Object.entries(versionsOf(view)).every(([uri, version]) => of.get(uri) === version);
}

/** Edits in the client's positions; undefined if a file of them is not open, or was edited there meanwhile. */
export function editsInView(view: PlanInView, edits: readonly Edit[]): readonly TextChange[] | undefined {
  const placed = edits.flatMap((edit): TextChange[] => {
    const { uri, version } = view.client(edit.uri);
    const range = view.range(edit) ?? view.span(edit);
    return version === null || !range ? [] : [{ uri, version, range, newText: edit.newText }];
  });
  return placed.length === edits.length ? placed : undefined;
}
