import type { Judgement } from "../../judge.ts";
import { contentsOf } from "../network-summary.ts";
import { compareFindings, type DiffFinding, somethingWorse } from "./findings.ts";
import { isUnread, type PlanDifference } from "./plan-difference.ts";

/** The result for one plan of a folder, between two states of the folder. */
export type ComparedPlan = {
  /** Path of its root, as it is called now; as it was called if it is gone. */
  readonly path: string;
  /** Former path of its root, if it was moved. */
  readonly movedFrom: string | undefined;
} & (
  | { readonly state: "compared"; readonly difference: PlanDifference }
  | { readonly state: "added" | "removed"; readonly side: PlanSide }
  /** At least one of its sides exists and could not be evaluated: the two cannot be compared. */
  | {
      readonly state: "not-evaluated";
      /** Its texts are the same on both sides, and so is the failure. */
      readonly unchanged: boolean;
      readonly before: PlanSide | undefined;
      readonly after: PlanSide | undefined;
    }
);

/** One side of a plan, on its own. */
export type PlanSide =
  | {
      readonly state: "evaluated";
      readonly circuits: number;
      /** 0 if the plan has no network, or none that could be read. */
      readonly parts: number;
      readonly cables: number;
      readonly networkUnread: boolean;
      readonly findings: readonly DiffFinding[];
    }
  | {
      readonly state: "not-evaluated";
      /** A sentence without its full stop; may hold text of the plan. */
      readonly why: string;
    };

export function evaluatedSide(judged: Judgement): PlanSide {
  const { model, network } = judged;
  const nothing: Judgement = { ...judged, findings: [] };
  return {
    state: "evaluated",
    circuits: model.circuits.length,
    ...(network ? contentsOf(network.network) : { parts: 0, cables: 0 }),
    networkUnread: isUnread(judged),
    findings: compareFindings(nothing, judged, { pairs: [], removed: [], added: [] }).came,
  };
}

/**
 * True if something became worse: a finding of severity error or warning that was not there before. The earlier findings of a
 * plan that could not be evaluated before are unknown; all its present findings count.
 */
export function becameWorse(plan: ComparedPlan): boolean {
  switch (plan.state) {
    case "compared":
      return somethingWorse(plan.difference.findings);
    case "removed":
      return false;
    case "added":
      return matters(plan.side);
    case "not-evaluated":
      return plan.after !== undefined && matters(plan.after);
  }
}

function matters(side: PlanSide): boolean {
  return side.state === "evaluated" && somethingWorse(foundNow(side.findings));
}

function foundNow(came: readonly DiffFinding[]) {
  return { came, went: [], changed: [], kept: { open: 0, accepted: 0 } };
}
