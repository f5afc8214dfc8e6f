import type { KnownDrop } from "../analysis/circuit-result.ts";
import { dropVerdict } from "../analysis/voltage-drop.ts";
import { type JudgedPlan, withKnownCurrent } from "../rules/rule.ts";
import { formatDistinct } from "../rules/wording/format-number.ts";

/** The drop of one circuit against its own limit, both in percent of the nominal voltage. */
export interface DropAgainstLimit {
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
  /**
   * It loses at least this much: a conductor carries more than it may and gets hotter than the calculation covers, or has no known
   * length.
   */
  readonly atLeast: boolean;
}

/** A drop with the name of the circuit or device that has it, as the plan gives it: not yet fit to be shown. */
export interface NamedDrop extends DropAgainstLimit {
  readonly name: string;
  /** On the whole supply path from the bank, and not only on the circuit that is named. */
  readonly fromBank: boolean;
}

/** Every drop that has a limit: of each circuit, and in a network of each device's whole supply path from the bank. */
export function dropsOf({ circuits, network }: JudgedPlan): NamedDrop[] {
  const overloaded = new Set<number>();
  const drops: NamedDrop[] = [];
  for (const { circuit, result } of withKnownCurrent(circuits)) {
    if (result.drop.overloaded) overloaded.add(circuit.record);
    if (circuit.word === "circuit" && result.drop.judged)
      drops.push({ ...ownDrop(result.drop), name: circuit.name, fromBank: false });
  }
  for (const way of network?.result.supplyPaths ?? []) {
    if (dropVerdict(way) === "not judged") continue;
    const conductors = way.legs.map(({ conductor }) => network?.network.conductors[conductor]?.record ?? -1);
    drops.push({
      ...{ dropPercent: way.dropPercent, dropLimitPercent: way.dropLimitPercent },
      atLeast: way.withoutLength.length > 0 || conductors.some((record) => overloaded.has(record)),
      name: network?.network.parts[way.part]?.name ?? "",
      fromBank: true,
    });
  }
  return drops;
}

/** The drop of a circuit between its own two ends. */
export function ownDrop({ dropPercent, dropLimitPercent, overloaded: atLeast }: KnownDrop): DropAgainstLimit {
  return { dropPercent, dropLimitPercent, atLeast };
}

/** The number of drops with a limit that are not judged, because a length is not known: of a device, the whole supply path. */
export function dropsWithoutVerdict({ circuits, network }: JudgedPlan): number {
  const paths = (network?.result.supplyPaths ?? []).filter((way) => dropVerdict(way) === "not judged");
  if (network) return paths.length;
  return withKnownCurrent(circuits).filter(
    ({ circuit, result }) => circuit.word === "circuit" && !result.drop.judged,
  ).length;
}

/** "drop of 3 devices not judged"; empty if all are. */
export function withoutVerdictInWords(count: number): string {
  return count === 0
    ? ""
    : `drop of ${count} ${count === 1 ? "device" : "devices"} not judged, a length is not known`;
}

/**
 * The drop nearest to its own limit, or furthest over it; undefined if there is none. 5 % where 3 % is allowed is worse than 9 %
 * where 10 % is: every output that shows one drop for many circuits shows this one.
 */
export function worstDrop<Drop extends DropAgainstLimit>(drops: readonly Drop[]): Drop | undefined {
  const share = ({ dropPercent, dropLimitPercent }: Drop) => dropPercent / dropLimitPercent;
  return drops.reduce<Drop | undefined>(
    (worst, next) => (worst && share(worst) >= share(next) ? worst : next),
    undefined,
  );
}

/**
 * "worst drop 14.1 %, limit 10 % (cabin heater)"; "(cabin heater, from the bank)" for a whole supply path. The name must already
 * be fit for the place where the words are shown.
 */
export function worstDropInWords(
  drop: DropAgainstLimit & { readonly fromBank?: boolean },
  name: string,
): string {
  const [percent, limit] = formatDistinct(drop.dropPercent, drop.dropLimitPercent);
  return `worst drop ${drop.atLeast ? "at least " : ""}${percent} %, limit ${limit} % (${name}${drop.fromBank ? ", from the bank" : ""})`;
}
