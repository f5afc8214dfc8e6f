import { type JudgedPlan, withKnownCurrent } from "../rules/rule.ts";
import { formatDistinct } from "../rules/wording/format-number.ts";

/** The drop of one circuit against its own limit, both in percent of the nominal voltage. */
export interface DropAgainstLimit {
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
  /** The conductor carries more than it may and gets hotter than the calculation covers; it loses at least this much. */
  readonly overloaded: boolean;
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
    if (circuit.word === "circuit") drops.push({ ...result.drop, name: circuit.name, fromBank: false });
  }
  for (const way of network?.result.supplyPaths ?? []) {
    const conductors = way.legs.map(({ conductor }) => network?.network.conductors[conductor]?.record ?? -1);
    drops.push({
      ...{ dropPercent: way.dropPercent, dropLimitPercent: way.dropLimitPercent },
      overloaded: conductors.some((record) => overloaded.has(record)),
      name: network?.network.parts[way.part]?.name ?? "",
      fromBank: true,
    });
  }
  return drops;
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
  return `worst drop ${drop.overloaded ? "at least " : ""}${percent} %, limit ${limit} % (${name}${drop.fromBank ? ", from the bank" : ""})`;
}
