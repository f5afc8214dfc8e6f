import { createHash } from "node:crypto";
import { isDeepStrictEqual } from "node:util";
import type { EditorWorkspace } from "./editor-workspace.ts";
import type { Duty, TextDigest, WorkingOn } from "./engine-messages.ts";
import type { Uri } from "./evaluate/workspace.ts";

/** Reports the plan that this engine works on, to show the front which one blocks it. */
export interface WorkReport {
  /** A check of the plan begins; `files` are its known files. Throws if the plan was given up. */
  begins(root: Uri, files: ReadonlySet<Uri>): void;
  /** Work on a plan resumes after another one may have been in between, or a file is read that may be a plan. */
  goesOn(root: Uri): void;
  /** The plan is no longer this engine's. */
  forget(root: Uri): void;
}

export interface WorkWiring {
  readonly workspace: Pick<EditorWorkspace, "read" | "isOpen" | "client">;
  duty(): Duty;
  send(working: WorkingOn): void;
}

export function createWorkReport({ workspace, duty, send }: WorkWiring): WorkReport {
  const known = new Map<Uri, WorkingOn>();
  let last: Uri | undefined;

  const digestOf = (uri: Uri): TextDigest => {
    const text = workspace.read(uri)?.text;
    return { uri, sha256: text === undefined ? undefined : createHash("sha256").update(text).digest("hex") };
  };

  const unchanged = ({ uri, sha256 }: TextDigest) => digestOf(uri).sha256 === sha256;

  return {
    begins(root, files) {
      const { role, givenUp } = duty();
      const before = givenUp.find((one) => one.root === root);
      if (before && before.texts.length > 0 && before.texts.every(unchanged))
        throw new Error(`${before.why}, and it is not tried again before its text changes`);
      const openUris = [...files]
        .filter((file) => workspace.isOpen(file))
        .map((file) => workspace.client(file).uri);
      const texts = role === "background" ? [...files].map(digestOf) : [];
      const working = { root, openUris, texts };
      const reported = last === root && isDeepStrictEqual(known.get(root), working);
      known.set(root, working);
      last = root;
      // The next keystroke in the same plan.
      if (!reported) send(working);
    },
    goesOn(root) {
      if (root === last) return;
      last = root;
      const openUris = workspace.isOpen(root) ? [workspace.client(root).uri] : [];
      const texts = duty().role === "background" ? [digestOf(root)] : [];
      send(known.get(root) ?? { root, openUris, texts });
    },
    forget: (root) => void known.delete(root),
  };
}
