import type { Citation } from "../standards/citation.ts";
import { displayName } from "./display-name.ts";

/** The citation of a figure stated in the plan. `said` is the builder's own source: "data sheet p. 3". */
export function statedInPlan(said: string | undefined): Citation {
  const shown = displayName(said ?? "");
  return shown ? { ...stated, note: `According to the plan: ${shown}` } : stated;
}

const stated: Citation = {
  document: "Stated in the plan",
  section: "",
  authority: "stated in the plan",
  confirmed: "read",
};
