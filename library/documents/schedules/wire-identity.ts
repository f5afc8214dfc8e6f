import { sizeInWords } from "../../rules/fixes/sized-fix.ts";
import { formatExact, formatRounded } from "../../rules/wording/format-number.ts";
import type { Wire, WireEnd } from "./wires.ts";

/**
 * Identifies a conductor when a plan is read again, even if names, terminals and their order may have changed: its name, its role
 * and its ends. All as written in the file of wire numbers.
 */
export interface WireIdentity {
  /** Undefined if the plan gives it no name of its own. */
  readonly name: string | undefined;
  readonly role: Wire["role"];
  /** `"fuse panel" branch`, `its load`, `the supply`. */
  readonly from: string;
  readonly to: string;
  /** "14 AWG, 2.74 m, 5 A": distinguishes two conductors of the same name, role and ends. In the file only if there are two. */
  readonly like?: string;
}

export function identityOf(wire: Wire): WireIdentity {
  const { name, role, from, to } = wire;
  return {
    name: isPlace(name) ? undefined : name,
    role,
    from: endInFile(from),
    to: endInFile(to),
    like: likeOf(wire),
  };
}

/** Name, role and ends: `"radio" positive: "fuse panel" branch to its load`. */
export function nameAndEnds({ name, role, from, to }: WireIdentity): string {
  return `${name === undefined ? unnamed : JSON.stringify(name)} ${role}: ${from} to ${to}`;
}

/** As written in the file: `"lamp" positive: "fuse panel" branch to its load (14 AWG, 2.74 m, 5 A)`. */
export function identityInFile(identity: WireIdentity): string {
  return `${nameAndEnds(identity)}${identity.like === undefined ? "" : ` (${identity.like})`}`;
}

function likeOf({ size, lengthM, from, to }: Wire): string {
  const ratings = [from, to].flatMap(({ protection }) =>
    protection ? [`${formatExact(protection.ratingA)} A`] : [],
  );
  const length = lengthM === undefined ? [] : [`${formatRounded(lengthM)} m`];
  return [sizeInWords(size), ...length, ...ratings].join(", ");
}

/** Undefined for text that {@link identityInFile} could not have written. */
export function readIdentity(text: string): WireIdentity | undefined {
  const found = identityPattern.exec(text)?.groups as
    | (Record<"name" | "role" | "from" | "to", string> & { readonly like?: string })
    | undefined;
  if (!found) return undefined;
  try {
    return {
      name: found.name === unnamed ? undefined : (JSON.parse(found.name) as string),
      role: found.role as Wire["role"],
      from: asWritten(found.from),
      to: asWritten(found.to),
      ...(found.like !== undefined && { like: found.like }),
    };
  } catch {
    // Not a valid quotation: `"\q"`.
    return undefined;
  }
}

/** Both ends are terminals of parts: they identify the conductor even if its name has changed. */
export function hasRealEnds({ from, to }: WireIdentity): boolean {
  return [from, to].every((end) => end !== ownLoad && end !== supply);
}

/**
 * A name that the plan does not give: the place of a call in its file, "camper.ts line 12", which changes with every line above
 * it. Names of variables are as good as given ones.
 */
function isPlace(name: string): boolean {
  return /\.[cm]?[jt]sx? line \d+(?: no\. \d+)?$/.test(name);
}

const unnamed = "unnamed";
const ownLoad = "its load";
const supply = "the supply";

/**
 * The ends that a conductor had before a part was put into it, such as a fuse holder or a relay, if it is the piece towards the
 * source: the piece at the source side of the part, or the other one if the part is mounted on a terminal. `others`: all conductors of the plan.
 */
export function endsBeforeSplit(
  { from, to }: Wire,
  others: readonly Wire[],
): readonly [string, string] | undefined {
  const [own, other] = to.inLine ? [to, from] : [from, to];
  if (!own.inLine) return undefined;
  const { isSourceSide, on } = own.inLine;
  if (!isSourceSide && on) return [endInFile({ at: "terminal", ...on }), endInFile(other)];
  if (!isSourceSide) return undefined;
  const beyond = others.flatMap((wire) => {
    const ends = [wire.from, wire.to];
    const at = ends.findIndex(({ inLine, part }) => inLine?.isSourceSide === false && part === own.part);
    return at < 0 ? [] : [ends[1 - at]!];
  });
  return beyond.length === 1 ? [endInFile(other), endInFile(beyond[0]!)] : undefined;
}

/** A load that a circuit states itself has the circuit's name, and adds no evidence of which circuit it is. */
function endInFile({ at, part, terminal }: Pick<WireEnd, "at" | "part" | "terminal">): string {
  if (at === "ownLoad") return ownLoad;
  if (at === "notStated") return supply;
  return `${isPlace(part) ? unnamed : JSON.stringify(part)} ${terminalInFile(terminal)}`;
}

function terminalInFile(terminal: string): string {
  return bareTerminal.test(terminal) ? terminal : JSON.stringify(terminal);
}

const bareTerminal = /^[A-Za-z]\w*$/;
const text = String.raw`"(?:[^"\\]|\\.)*"`;
const bare = String.raw`[A-Za-z]\w*`;
const end = `(?:${ownLoad}|${supply}|(?:${unnamed}|${text}) (?:${bare}|${text}))`;
const identityPattern = new RegExp(
  `^(?<name>${unnamed}|${text}) (?<role>cable|positive|return): (?<from>${end}) to (?<to>${end})(?: \\((?<like>[^()]{1,80})\\))?$`,
  "su",
);

/** An end as a person may have written it, in our form: without unnecessary quotation marks. */
function asWritten(written: string): string {
  if (written === ownLoad || written === supply) return written;
  const [, part, terminal] = new RegExp(`^(${unnamed}|${text}) (.*)$`, "su").exec(
    written,
  ) as unknown as string[];
  const name = terminal!.startsWith('"') ? (JSON.parse(terminal!) as string) : terminal!;
  return `${part === unnamed ? unnamed : JSON.stringify(JSON.parse(part!))} ${terminalInFile(name)}`;
}
