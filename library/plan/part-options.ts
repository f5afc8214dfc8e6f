import type { AcceptedFindings } from "./rule-id.ts";

/** What may be said of every part. Every property may be left out. */
export interface PartOptions {
  /**
   * What the part is called, in findings, lists and drawings. Shown up to 80 characters.
   *
   * Left out: taken as the name of the variable that holds the part, or its place in the file.
   *
   * Example: `name: "House bank"`
   */
  readonly name?: string;
  /**
   * Where its numbers come from, in your own words, so that others can look them up.
   *
   * Left out: taken as not stated.
   *
   * Example: `source: "data sheet p. 3"`
   */
  readonly source?: string;
  /**
   * Findings that you accept for this part: the rule's id, and your reason. They are then shown as accepted, with
   * the reason, everywhere. An empty reason is an error.
   *
   * Left out: taken as nothing accepted.
   *
   * Example: `accept: { "disconnect/missing": "the plug is pulled by hand" }`
   */
  readonly accept?: AcceptedFindings;
}
