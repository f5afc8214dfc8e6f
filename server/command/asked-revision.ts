import type { AskedRevision } from "../evaluate/git/plan-revision.ts";
import type { GivenOptions } from "./options.ts";
import { UsageError } from "./usage.ts";

/** The revision that was asked for on the command line. */
export function readRevision({ revision, commit }: GivenOptions): AskedRevision {
  if (revision !== undefined && commit)
    throw new UsageError("--revision states a revision and --commit takes it from git: give one of them.");
  if (revision?.trim() === "") throw new UsageError("--revision takes a text, such as B.");
  return commit ? "commit" : revision === undefined ? undefined : { text: revision };
}
