import type { PassedBy, Unread, Uri } from "../workspace.ts";
import { fileName } from "./file-name.ts";
import { inOrder } from "./passed-by.ts";

/**
 * Decides which files of a folder are plans, on the disk and in a revision of git. Folders of installed packages, git's own and
 * hidden ones are skipped and not reported. In all other folders, every script that names the library is a plan, or is passed
 * by with a reason.
 */
export function isEntered(folderName: string): boolean {
  return folderName !== "node_modules" && !folderName.startsWith(".");
}

export const deepestFolder = 40;

export const tooDeep: Unread = { reason: "too-deep", why: `is more than ${deepestFolder} folders deep` };

export const wrongName: Unread = {
  reason: "name-not-utf8",
  why: "has a name that is not UTF-8, or is in a folder with such a name: rename it",
};

export function isScript(name: string): boolean {
  return /\.[cm]?[jt]sx?$/i.test(name) && !/\.d\.[cm]?ts$/i.test(name);
}

export function isWireNumbers(name: string): boolean {
  return name.endsWith(".wire-numbers.txt");
}

/** The files and folders that a walk met. */
export interface Met {
  /** Scripts that name the library. */
  readonly scripts: readonly Uri[];
  readonly passedBy: readonly PassedBy[];
  readonly wireNumbers: readonly Uri[];
}

export interface FoundPlans {
  readonly planFiles: readonly Uri[];
  readonly passedBy: readonly PassedBy[];
  readonly wireNumbers: readonly Uri[];
}

/** Sorts the scripts of a walk into plans and those that are passed by. Git's reason precedes any other. */
export function plansAmong(
  { scripts, passedBy, wireNumbers }: Met,
  isIgnored: (uri: Uri) => boolean,
  textOf: (uri: Uri) => string | undefined,
): FoundPlans {
  const ignored = (uri: Uri): PassedBy => ({ uri, reason: "ignored-by-git", why: "is ignored by git" });
  const kept = scripts.filter((uri) => !isIgnored(uri));
  const copies = compiledCopies(kept, textOf);
  return {
    planFiles: kept.filter((uri) => !copies.has(uri)),
    passedBy: inOrder([
      ...scripts.filter(isIgnored).map(ignored),
      ...passedBy.map((file) => (isIgnored(file.uri) ? ignored(file.uri) : file)),
      ...copies.values(),
    ]),
    wireNumbers,
  };
}

/**
 * JavaScript that was made from a plan in TypeScript: it has the name that a compiler gives it, beside the plan or in an output
 * folder, and it either states that it was compiled or contains no figure that is not in the plan. A script with figures of its
 * own is a plan of its own.
 */
function compiledCopies(
  scripts: readonly Uri[],
  textOf: (uri: Uri) => string | undefined,
): ReadonlyMap<Uri, PassedBy> {
  const copies = new Map<Uri, PassedBy>();
  let sources: SourceNames | undefined;
  for (const script of scripts) {
    const compiled = compiledEnding.exec(script);
    if (!compiled) continue;
    sources ??= new SourceNames(scripts);
    const source = sources.of(script.slice(0, compiled.index), compiled[1] ?? "");
    if (source === undefined || !isMadeFrom(textOf(script) ?? "", textOf(source) ?? "")) continue;
    copies.set(script, {
      ...{ uri: script, reason: "compiled-copy" },
      why: `is a compiled copy of ${fileName(source)}`,
    });
  }
  return copies;
}

const compiledEnding = /\.([cm]?)jsx?$/i;
const sourceEnding = /\.([cm]?)tsx?$/i;
const outputFolder = /^(?:build|dist|lib|out|output|target)$/i;

/** Sources by the paths of their compiled output. */
class SourceNames {
  readonly #stems = new Map<string, Uri>();
  /** By a folder above the source, and the end of its path below any folder in between. */
  readonly #ends = new Map<string, Uri>();

  constructor(scripts: readonly Uri[]) {
    for (const uri of scripts) {
      const ending = sourceEnding.exec(uri);
      if (!ending) continue;
      const stem = uri.slice(0, ending.index);
      const kind = ending[1]!;
      this.#stems.set(keyOf("", stem, kind), uri);
      const names = stem.split("/");
      for (let above = 3; above < names.length; above++) {
        const folder = names.slice(0, above).join("/");
        for (let from = above; from < names.length; from++)
          this.#ends.set(keyOf(folder, names.slice(from).join("/"), kind), uri);
      }
    }
  }

  of(stem: string, kind: string): Uri | undefined {
    const beside = this.#stems.get(keyOf("", stem, kind));
    if (beside !== undefined) return beside;
    const names = stem.split("/");
    for (let at = names.length - 2; at >= 3; at--) {
      if (!outputFolder.test(names[at]!)) continue;
      const end = names.slice(at + 1).join("/");
      const found = this.#ends.get(keyOf(names.slice(0, at).join("/"), end, kind));
      if (found !== undefined) return found;
    }
    return undefined;
  }
}

function keyOf(folder: string, end: string, kind: string): string {
  return `${folder}\n${end}\n${kind.toLowerCase()}`;
}

function isMadeFrom(script: string, source: string): boolean {
  if (/^\/\/[#@] sourceMappingURL=/m.test(script) || /\bexports, ["']__esModule["']/.test(script))
    return true;
  const left = new Map<string, number>();
  for (const figure of figuresIn(source)) left.set(figure, (left.get(figure) ?? 0) + 1);
  return figuresIn(script).every((figure) => {
    const count = left.get(figure) ?? 0;
    left.set(figure, count - 1);
    return count > 0;
  });
}

function figuresIn(text: string): readonly string[] {
  return text.match(/(?<![\w$.])\.?\d[\w.]*/g) ?? [];
}
