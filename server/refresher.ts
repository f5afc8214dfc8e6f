import type { Uri } from "./evaluate/workspace.ts";

/**
 * Asks the editor to fetch hints, lenses or findings again, and only when what it has would now read differently: hints that
 * blink get turned off. A file that was typed in since is asked for by the editor anyway.
 */
export interface Refresher {
  /** Remembers an answer that was just given, and how to make it again. */
  answered(kind: Kind, file: Uri, version: number | null, again: () => unknown): void;
  /** An outcome came through the gate, and the display of these files may change. */
  arrived(isAffected: (file: Uri) => boolean): void;
  /** Answers for a file that is no longer open are of no interest. */
  closed(file: Uri): void;
  /** Asks for one kind, once for all that happens in the same turn. */
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
