import ts from "typescript";
import { type CallLike, type Site, sitesInFile } from "./marks.ts";
import type { PlanFile } from "./parse.ts";
import type { RunOutcome } from "./sandbox.ts";

/**
 * What a run tells of the circumstances in which expressions were evaluated: which calls were open, which literal made an
 * object, which objects were seen. The marks' numbers are turned into nodes of the tree here.
 */
export class Scenes {
  readonly #evidence: Evidence;
  readonly #numbered: ReadonlyMap<number, PlanFile>;
  readonly #frames = new Map<number, Frame>();
  readonly #scenes = new Map<Frame, Scene>();

  constructor(evidence: Evidence) {
    this.#evidence = evidence;
    this.#numbered = new Map(evidence.files.map((file) => [file.number, file]));
  }

  /** An open call, by its index in the outcome. */
  frame(index: number): Frame | undefined {
    const known = this.#frames.get(index);
    if (known) return known;
    const call = this.#evidence.outcome.calls[index];
    const at = call && this.#site(call.callSite);
    if (!at || ts.isObjectLiteralExpression(at.site.node)) return undefined;
    const frameOf = (within: number) => this.frame(within);
    const frame: Frame = {
      file: at.file,
      node: at.site.node,
      seen: seenBy(at.site, call.seen),
      get within() {
        return frameOf(call.within);
      },
    };
    this.#frames.set(index, frame);
    return frame;
  }

  /** What the run remembers of an object, by the index of its birth. */
  born(index: number | undefined): WrittenObject | undefined {
    const birth = index === undefined ? undefined : this.#evidence.outcome.births[index];
    const at = birth && this.#site(birth.literal);
    if (!at || !ts.isObjectLiteralExpression(at.site.node)) return undefined;
    const literal = at.site.node;
    const fn = functionAround(literal);
    const caller = fn && callerAt(this.frame(birth.call), literal, at.file);
    return {
      file: at.file,
      literal,
      scene: { file: at.file, fn, caller, seen: seenBy(at.site, birth.seen) },
    };
  }

  /** The scene in which the arguments of a call were evaluated. */
  inside(frame: Frame): Scene {
    let scene = this.#scenes.get(frame);
    if (!scene) {
      const fn = functionAround(frame.node);
      scene = {
        file: frame.file,
        fn,
        caller: fn && callerAt(frame.within, frame.node, frame.file),
        seen: frame.seen,
      };
      this.#scenes.set(frame, scene);
    }
    return scene;
  }

  /** The scene of a declaration that is visible in a scene: the same function's, or an outer one's. */
  sceneOf(declaration: ts.Node, scene: Scene): Scene {
    const fn = functionAround(declaration);
    return this.sceneIn(fn, scene) ?? { file: scene.file, fn, caller: undefined, seen: scene.seen };
  }

  /** The scene of a function that is open in a scene: its own, or that of one that it was called from. */
  sceneIn(fn: ts.Node | undefined, from: Scene): Scene | undefined {
    let scene: Scene | undefined = from;
    for (let steps = 0; scene && steps < longestTrail; steps++) {
      if (scene.fn === fn) return scene === from ? from : { ...scene, seen: from.seen };
      scene = scene.caller && this.inside(scene.caller);
    }
    return undefined;
  }

  #site(number: number): { readonly file: PlanFile; readonly site: Site } | undefined {
    const file = this.#numbered.get(Math.floor(number / sitesInFile));
    const site = file?.tree.marked?.sites[number % sitesInFile];
    return file && site && { file, site };
  }
}

/** A part of a plan's text. */
export interface Written {
  readonly file: PlanFile;
  readonly node: ts.Node;
}

/** An object literal, and where it was evaluated. */
export interface WrittenObject {
  readonly file: PlanFile;
  readonly literal: ts.ObjectLiteralExpression;
  readonly scene: Scene;
}

export interface Evidence {
  readonly outcome: RunOutcome;
  readonly root: PlanFile;
  readonly files: readonly PlanFile[];
  /** The file that an import in a file leads to; undefined for the library. */
  readonly imported: (importer: PlanFile, text: string) => PlanFile | undefined;
}

/** An open call, with everything that is known of the place it was made at. */
export interface Frame {
  readonly file: PlanFile;
  readonly node: CallLike;
  readonly seen: Seen;
  readonly within: Frame | undefined;
}

/** The circumstances in which an expression was evaluated: the call that its function was entered by, and the objects seen. */
export interface Scene {
  readonly file: PlanFile;
  readonly fn: ts.Node | undefined;
  readonly caller: Frame | undefined;
  readonly seen: Seen;
}

export type Seen = (text: string) => number | undefined;

export const seesNothing: Seen = () => undefined;

/** Longer chains are followed no further; the value then is where the chain was left. */
export const longestTrail = 60;

function seenBy(site: Site, births: readonly number[]): Seen {
  const { seen } = site;
  if (seen.length === 0) return seesNothing;
  return (text) => {
    const birth = births[seen.indexOf(text)];
    return birth === undefined || birth < 0 ? undefined : birth;
  };
}

/** The call that a node's function was entered by: calls whose arguments the node is part of were open, but are not it. */
function callerAt(open: Frame | undefined, node: ts.Node, file: PlanFile): Frame | undefined {
  const fn = functionAround(node);
  let frame = open;
  while (frame && frame.file === file && contains(frame.node, node) && functionAround(frame.node) === fn) {
    frame = frame.within;
  }
  return frame;
}

function contains(outer: ts.Node, inner: ts.Node): boolean {
  return outer.pos <= inner.pos && inner.end <= outer.end;
}

function functionAround(node: ts.Node): ts.Node | undefined {
  let outer: ts.Node | undefined = node.parent;
  while (outer && !ts.isFunctionLike(outer)) outer = outer.parent;
  return outer;
}
