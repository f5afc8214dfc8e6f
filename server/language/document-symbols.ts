import { type DocumentSymbol, SymbolKind } from "vscode-languageserver-types";
import type { Circuit } from "../../library/model/circuit.ts";
import { sizeInWords } from "../../library/rules/sized-fix.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { loadInWords, protectionInWords } from "./circuit-in-words.ts";
import { plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

/** The circuits that are made in a file, in the order of the plan, each with its load, size and protection. */
export function documentSymbols(view: PlanInView, uri: Uri): DocumentSymbol[] {
  return view.plan.judgement.model.circuits.flatMap((circuit) => {
    const call = view.plan.callOf(circuit.record);
    const range = call.uri === uri ? view.span(call) : undefined;
    if (!range) return [];
    return [
      {
        name: plainWords(circuit.name) || "circuit",
        detail: detail(circuit),
        kind: SymbolKind.Object,
        range,
        selectionRange: { start: range.start, end: range.start },
      },
    ];
  });
}

function detail(circuit: Circuit): string {
  return [loadInWords(circuit), sizeInWords(circuit.conductor), protectionInWords(circuit)].join(", ");
}
