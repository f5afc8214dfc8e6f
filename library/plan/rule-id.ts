/** A rule whose finding a builder may accept, with a reason. The same as the path of its page, see `loomwright explain`. */
export type RuleId =
  | "conductor/ambient"
  | "conductor/ampacity"
  | "conductor/insulation-not-stated"
  | "conductor/minimum-size"
  | "conductor/voltage-drop"
  | "plan/unit-suspect"
  | "protection/above-conductor"
  | "protection/below-load"
  | "protection/both-ends"
  | "protection/distance"
  | "protection/headroom"
  | "protection/missing"
  | "protection/standard-rating";
