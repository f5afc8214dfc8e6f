import type { Uri } from "./evaluate/workspace.ts";

/**
 * Asks the editor to fetch hints, lenses or findings again, but only if their content would now differ: users turn off hints
 * that blink. The editor fetches them anyway for a file that was edited since.
 */
export interface Refresher {
  /** Remembers an answer just given, and the function to compute it again. */
  answered(kind: Kind, file: Uri, version: number | null, again: () => unknown): void;
  /** The gate let an outcome through, and the display of these files may change. */
  arrived(isAffected: (file: Uri) => boolean): void;
  /** Answers for a file that is no longer open are irrelevant. */
  closed(file: Uri): void;
  /** Asks for one kind, once for all events of the same turn. */
  ask(kind: Kind): void;
}

export type Kind = "findings" | "hints" | "lenses";

export interface RefreshWiring {
  versionOf(file: Uri): number | null;
  send(kind: Kind): void;
}

export function createRefresher({ versionOf, send }: RefreshWiring): Refresher {
  const answers = new Map<string, Answer>();
  const asking = new Set<Kind>();

  const ask = (kind: Kind): void => {
    if (asking.has(kind)) return;
    asking.add(kind);
    queueMicrotask(() => {
      asking.delete(kind);
      send(kind);
    });
  };

  return {
    ask,
    answered(kind, file, version, again) {
      answers.set(`${kind} ${file}`, { kind, file, version, again, text: JSON.stringify(again()) });
    },
    closed(file) {
      for (const [key, answer] of answers) if (answer.file === file) answers.delete(key);
    },
    arrived(isAffected) {
      for (const [key, { kind, file, version, again, text }] of answers) {
        if (!isAffected(file)) continue;
        const now = versionOf(file);
        if (now === null) answers.delete(key);
        else if (now === version && JSON.stringify(again()) !== text) ask(kind);
      }
    },
  };
}

interface Answer {
  readonly kind: Kind;
  readonly file: Uri;
  readonly version: number | null;
  readonly again: () => unknown;
  readonly text: string;
}
