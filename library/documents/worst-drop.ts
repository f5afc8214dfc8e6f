import { tellApart } from "../rules/figures.ts";

/** The drop of one circuit against its own limit, both in percent of the nominal voltage. */
export interface DropAgainstLimit {
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
  /** The conductor carries more than it may, gets hotter than can be reckoned, and so loses at least this much. */
  readonly overloaded: boolean;
}

/**
 * The drop nearest to its own limit, or furthest over it; undefined where there is none. 5 % where 3 % is allowed is worse
 * than 9 % where 10 % is: every face that speaks of one drop for many circuits speaks of this one.
 */
export function worstDrop<Drop extends DropAgainstLimit>(drops: readonly Drop[]): Drop | undefined {
  const share = ({ dropPercent, dropLimitPercent }: Drop) => dropPercent / dropLimitPercent;
  return drops.reduce<Drop | undefined>(
    (worst, next) => (worst && share(worst) >= share(next) ? worst : next),
    undefined,
  );
}

/** "worst drop 14.1 %, limit 10 % (cabin heater)". The name has to be fit for the place where the words are shown. */
export function worstDropInWords(drop: DropAgainstLimit, name: string): string {
  const [percent, limit] = tellApart(drop.dropPercent, drop.dropLimitPercent);
  return `worst drop ${drop.overloaded ? "at least " : ""}${percent} %, limit ${limit} % (${name})`;
}
