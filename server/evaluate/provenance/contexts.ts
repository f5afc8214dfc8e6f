import ts from "typescript";
import { type CallLike, type Site, sitesInFile } from "../instrument/instrument.ts";
import type { RunOutcome } from "../sandbox/contract.ts";
import type { PlanFile } from "../text/parse.ts";

/**
 * The evaluation contexts of a run: open calls, the literals that allocated objects, and observed objects. Maps the numbers of
 * sites to AST nodes.
 */
export class EvaluationContexts {
  readonly #traced: TracedRun;
  readonly #numbered: ReadonlyMap<number, PlanFile>;
  readonly #frames = new Map<number, Frame>();
  readonly #contexts = new Map<Frame, EvaluationContext>();

  constructor(traced: TracedRun) {
    this.#traced = traced;
    this.#numbered = new Map(traced.files.map((file) => [file.number, file]));
  }

  /** An open call, by its index in the outcome. */
  frame(index: number): Frame | undefined {
    const known = this.#frames.get(index);
    if (known) return known;
    const call = this.#traced.outcome.calls[index];
    const at = call && this.#site(call.callSite);
    if (!at || ts.isObjectLiteralExpression(at.site.node)) return undefined;
    const frameOf = (within: number) => this.frame(within);
    const frame: Frame = {
      file: at.file,
      node: at.site.node,
      seen: observedAt(at.site, call.seen),
      get within() {
        return frameOf(call.within);
      },
    };
    this.#frames.set(index, frame);
    return frame;
  }

  /** The allocation of an object, by its index in the outcome. */
  allocatedAt(index: number | undefined): SourceObject | undefined {
    const allocation = index === undefined ? undefined : this.#traced.outcome.allocations[index];
    const at = allocation && this.#site(allocation.literal);
    if (!at || !ts.isObjectLiteralExpression(at.site.node)) return undefined;
    const literal = at.site.node;
    const fn = functionAround(literal);
    const caller = fn && callerAt(this.frame(allocation.call), literal, at.file);
    return {
      file: at.file,
      literal,
      context: { file: at.file, fn, caller, seen: observedAt(at.site, allocation.seen) },
    };
  }

  /** The evaluation context of a call's arguments. */
  inside(frame: Frame): EvaluationContext {
    let context = this.#contexts.get(frame);
    if (!context) {
      const fn = functionAround(frame.node);
      context = {
        file: frame.file,
        fn,
        caller: fn && callerAt(frame.within, frame.node, frame.file),
        seen: frame.seen,
      };
      this.#contexts.set(frame, context);
    }
    return context;
  }

  /** The context of a declaration visible in a context: of the same function, or of an outer one. */
  contextOf(declaration: ts.Node, context: EvaluationContext): EvaluationContext {
    const fn = functionAround(declaration);
    return this.contextIn(fn, context) ?? { file: context.file, fn, caller: undefined, seen: context.seen };
  }

  /** The context of a function that is open in a context: the current one, or one of its callers. */
  contextIn(fn: ts.Node | undefined, from: EvaluationContext): EvaluationContext | undefined {
    let context: EvaluationContext | undefined = from;
    for (let steps = 0; context && steps < longestTrail; steps++) {
      if (context.fn === fn) return context === from ? from : { ...context, seen: from.seen };
      context = context.caller && this.inside(context.caller);
    }
    return undefined;
  }

  #site(number: number): { readonly file: PlanFile; readonly site: Site } | undefined {
    const file = this.#numbered.get(Math.floor(number / sitesInFile));
    const site = file?.tree.instrumented?.sites[number % sitesInFile];
    return file && site && { file, site };
  }
}

/** An AST node with its file. */
export interface SourceNode {
  readonly file: PlanFile;
  readonly node: ts.Node;
}

/** An object literal, with its evaluation context. */
export interface SourceObject {
  readonly file: PlanFile;
  readonly literal: ts.ObjectLiteralExpression;
  readonly context: EvaluationContext;
}

export interface TracedRun {
  readonly outcome: RunOutcome;
  readonly root: PlanFile;
  readonly files: readonly PlanFile[];
  /** The target file of an import in a file; undefined for the library. */
  readonly imported: (importer: PlanFile, text: string) => PlanFile | undefined;
}

/** An open call, with all known facts about its call site. */
export interface Frame {
  readonly file: PlanFile;
  readonly node: CallLike;
  readonly seen: ObservedLocals;
  readonly within: Frame | undefined;
}

/** An evaluation context: the call that entered its function, and the observed objects. */
export interface EvaluationContext {
  readonly file: PlanFile;
  readonly fn: ts.Node | undefined;
  readonly caller: Frame | undefined;
  readonly seen: ObservedLocals;
}

export type ObservedLocals = (text: string) => number | undefined;

export const observesNothing: ObservedLocals = () => undefined;

/** Longer chains are not followed; the value is then placed at the last step. */
export const longestTrail = 60;

function observedAt(site: Site, allocations: readonly number[]): ObservedLocals {
  const { seen } = site;
  if (seen.length === 0) return observesNothing;
  return (text) => {
    const allocation = allocations[seen.indexOf(text)];
    return allocation === undefined || allocation < 0 ? undefined : allocation;
  };
}

/** The call that entered a node's function: open calls that contain the node in their arguments do not count. */
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
