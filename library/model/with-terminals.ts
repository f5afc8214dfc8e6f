import { cooler } from "./coolest-terminal.ts";
import type { NetworkTerminal, Part } from "./network.ts";
import type { FuseHolderPart } from "./parts/fuse-holder.ts";
import type { Protection, Run, TerminalSize } from "./run.ts";

/**
 * A run with the coolest of the terminals where its conductors end, with the largest conductors that they take, and with the family
 * of fuses that they take: the same object for the same run and terminals.
 *
 * @param ends The first is that of its `protect`.
 */
export function withTerminals<R extends Run>(run: R, ends: readonly number[], places: Places): R {
  const { terminals, parts } = places;
  const coolestTerminal = ends.reduce((coolest, end) => {
    const { ratedC, part } = terminals[end]!;
    return ratedC === undefined ? coolest : cooler(coolest, { ratedC, of: parts[part]!.name });
  }, run.coolestTerminal);
  const sizes = ends.flatMap((end): readonly TerminalSize[] => {
    const { largest, part } = terminals[end]!;
    return largest ? [{ largest, of: parts[part]!.name }] : [];
  });
  const [first, ...others] = ends;
  const protection = ofFamilyAt(run.protection, first, places);
  const far = others.find((end) => terminals[end]!.fuseFamily !== undefined);
  const protectionFarEnd = ofFamilyAt(run.protectionFarEnd, far, places);
  const isSame = protection === run.protection && protectionFarEnd === run.protectionFarEnd;
  if (coolestTerminal === run.coolestTerminal && sizes.length === 0 && isSame) return run;
  const terminalSizes = [...(run.terminalSizes ?? []), ...sizes];
  const made: R = {
    ...run,
    ...(coolestTerminal && { coolestTerminal }),
    ...(terminalSizes.length > 0 && { terminalSizes }),
    ...{ protection, protectionFarEnd },
  };
  const before = madeBefore.get(run);
  if (before && keyOf(before) === keyOf(made)) return before as R;
  madeBefore.set(run, made);
  return made;
}

interface Places {
  readonly terminals: readonly NetworkTerminal[];
  readonly parts: readonly { readonly name: string }[];
}

function keyOf({ coolestTerminal, terminalSizes, protection, protectionFarEnd }: Run): string {
  const families = [protection, protectionFarEnd].map((one) => [one?.family, one?.familyStatedAt]);
  return JSON.stringify([coolestTerminal, terminalSizes, families]);
}

/** A device that states no family is of the one that its position in a fuse panel takes. */
function ofFamilyAt(device: Protection | null, end: number | undefined, places: Places): Protection | null {
  const stated = device && device.family === undefined ? familyAt(end, places) : undefined;
  return stated ? { ...device!, ...stated } : device;
}

function familyAt(
  end: number | undefined,
  { terminals, parts }: Places,
): Required<Pick<Protection, "family" | "familyStatedAt">> | undefined {
  const { fuseFamily, part } = terminals[end ?? -1] ?? {};
  return fuseFamily && { family: fuseFamily, familyStatedAt: parts[part!]!.name };
}

/** The same for a fuse holder that is mounted on a branch of a fuse panel. A panel of breakers holds no fuse holder. */
export function withFamilyOfPanel(part: Part, places: Places): Part {
  if (part.kind !== "fuseHolder" || part.family !== undefined) return part;
  const stated = familyAt(part.mountedOn, places);
  if (!stated || stated.family === "circuit breaker") return part;
  const before = holdersBefore.get(part);
  if (before?.family === stated.family && before.familyStatedAt === stated.familyStatedAt) return before;
  const made = { ...part, family: stated.family, familyStatedAt: stated.familyStatedAt };
  holdersBefore.set(part, made);
  return made;
}

const holdersBefore = new WeakMap<FuseHolderPart, FuseHolderPart>();

/** A run that an edit elsewhere leaves as it was stays the same object. */
const madeBefore = new WeakMap<Run, Run>();
