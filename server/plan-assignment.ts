import type { Duty } from "./engine-messages.ts";
import type { Membership } from "./evaluate/files/plan-roots.ts";
import type { Uri } from "./evaluate/workspace.ts";

export interface Assignment {
  /** Roots of the plans that the engine answers for. */
  readonly roots: ReadonlySet<Uri>;
  /** Open files that the other engine answers for. */
  readonly elsewhere: readonly Uri[];
}

export interface AssignmentQuestion {
  readonly duty: Duty;
  readonly membership: Membership;
  readonly open: readonly Uri[];
  /** Plans that are not open are requested too. */
  readonly wholeWorkspace: boolean;
}

/**
 * Divides the plans between the two engines. Both compute the same division, because their input is the same. Plans that share
 * a file stay together, because one engine answers for a file. Plans of open files are the foreground engine's, unless they
 * share a file with a slow plan.
 */
export function assignPlans({ duty, membership, open, wholeWorkspace }: AssignmentQuestion): Assignment {
  const opened = new Set(open.flatMap((file) => membership.rootsOf(file)));
  const slow = duty.slow.length === 0 ? noRoots : joinedWith(duty.slow, membership);
  if (duty.role === "foreground") {
    return {
      roots: new Set([...opened].filter((root) => !slow.has(root))),
      elsewhere: open.filter((file) => membership.rootsOf(file).some((root) => slow.has(root))),
    };
  }
  const candidates = wholeWorkspace ? membership.roots : [...opened];
  return { roots: new Set(candidates.filter((root) => slow.has(root) || !opened.has(root))), elsewhere: [] };
}

const noRoots: ReadonlySet<Uri> = new Set();

/** The plans connected to one of these by shared files, directly or through others. */
function joinedWith(some: readonly Uri[], { roots, filesOf }: Membership): ReadonlySet<Uri> {
  const joined = new Set(some.filter((root) => roots.includes(root)));
  const files = new Set<Uri>();
  for (const root of joined) {
    for (const file of filesOf(root)) files.add(file);
    for (const other of roots) if (!joined.has(other) && sharesOne(filesOf(other), files)) joined.add(other);
  }
  return joined;
}

function sharesOne(some: ReadonlySet<Uri>, others: ReadonlySet<Uri>): boolean {
  for (const one of some) if (others.has(one)) return true;
  return false;
}
