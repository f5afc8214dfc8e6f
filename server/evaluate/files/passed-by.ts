export type PassedByReason = keyof typeof effects;

/**
 * The reasons, and their effect on the answer. "not judged": the file may hide a hazard, and the check is incomplete. "known":
 * the user decided it, or the same plan is judged under another name.
 */
const effects = {
  /** The disk refuses to read it, or it is no ordinary file. */
  unreadable: "not judged",
  "too-large": "not judged",
  "too-deep": "not judged",
  "name-not-utf8": "not judged",
  "text-not-utf8": "not judged",
  /** It loads the library with `require()` or `import()`, which the sandbox does not run. */
  require: "not judged",
  "ignored-by-git": "known",
  linked: "known",
  "compiled-copy": "known",
  /** A file of wire numbers without a plan beside it. */
  "numbers-without-plan": "known",
} as const;

export const passedByReasons = Object.keys(effects) as [PassedByReason, ...PassedByReason[]];

/** True if a file passed by for this reason may contain a hazard. */
export function mayHideHazard({ reason }: { readonly reason: PassedByReason }): boolean {
  return effects[reason] === "not judged";
}

/** Sorted by URI, without duplicates. */
export function inOrder<File extends { readonly uri: string }>(files: Iterable<File>): readonly File[] {
  const byUri = new Map<string, File>();
  for (const file of files) if (!byUri.has(file.uri)) byUri.set(file.uri, file);
  return [...byUri.values()].sort((a, b) => (a.uri < b.uri ? -1 : 1));
}
