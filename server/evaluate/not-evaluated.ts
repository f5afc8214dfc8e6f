import type { Judgement } from "../../library/judge.ts";
import type { CheckOutcome, SourceRange } from "./checked-plan.ts";
import { fileName } from "./files/file-name.ts";
import type { Workspace } from "./workspace.ts";

/** A plan that ran to its end, or the reason why it did not, as a sentence that names the file and the line. */
export type Evaluated =
  | { readonly state: "evaluated"; readonly judgement: Judgement }
  | { readonly state: "not-evaluated"; readonly why: string };

/**
 * The result of a plan for users of complete plans only: the records before it stopped would look as if the rest had been
 * removed.
 */
export function evaluatedOrWhy(outcome: CheckOutcome, { read }: Pick<Workspace, "read">): Evaluated {
  const at = ({ uri, start }: SourceRange) => {
    const line = (read(uri)?.text ?? "").slice(0, start).split(/\r\n|\r|\n/).length;
    return `${fileName(uri)}, line ${line}`;
  };
  if (outcome.state === "incomplete") {
    const { place, text } = outcome.unfinished;
    return { state: "not-evaluated", why: `${at(place)}, is not complete TypeScript: ${text}` };
  }
  const { judgement, findings } = outcome;
  if (judgement.problems.length === 0) return { state: "evaluated", judgement };
  const stopped = findings.find(({ finding }) => "problem" in finding.at);
  return {
    state: "not-evaluated",
    why: stopped ? `${at(stopped.place)}: ${stopped.message}` : "it did not run to its end",
  };
}
