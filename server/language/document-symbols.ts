import { type DocumentSymbol, SymbolKind } from "vscode-languageserver";
import type { Circuit } from "../../library/model/circuit.ts";
import { withUnit } from "../../library/rules/figures.ts";
import type { Uri } from "../evaluate/workspace.ts";
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

function detail({ loadA, conductor, protection }: Circuit): string {
  const wires = conductor.parallel > 1 ? `${conductor.parallel} × ` : "";
  return [
    withUnit(loadA, "A"),
    wires + sizeInWords(conductor),
    protection ? `protected at ${withUnit(protection.ratingA, "A")}` : "no protection",
  ].join(", ");
}

/** "4 AWG", "2.5 mm²": trade sizes are written as they are sold, not rounded. */
export function sizeInWords(conductor: Circuit["conductor"]): string {
  return conductor.system === "awg" ? `${conductor.awg} AWG` : `${conductor.mm2} mm²`;
}
