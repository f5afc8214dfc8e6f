import { createHash } from "node:crypto";
import * as z from "zod";
import { UsageError } from "./usage.ts";

/** The share of the plans in a report, and the data needed to put the shares together again. */
export const shardSchema = z.strictObject({
  /** From 1. */
  index: z.int().min(1),
  of: z.int().min(1),
  /** How many plans all shares have together. */
  plans: z.int().min(0),
  /** Of the names of all plans, in their order: shares of different folders do not belong together. */
  digest: z.string(),
});

export type Shard = Readonly<z.infer<typeof shardSchema>>;

/** The share as typed: the I-th of N. */
export interface AskedShard {
  readonly index: number;
  readonly of: number;
}

/** `2/3`, as typed after --shard. */
export function askedShard(given: string | undefined): AskedShard | undefined {
  if (given === undefined) return undefined;
  const [, first, second] = /^([1-9]\d{0,3})\/([1-9]\d{0,3})$/.exec(given) ?? [];
  const asked = { index: Number(first), of: Number(second) };
  if (asked.index <= asked.of) return asked;
  throw new UsageError(`--shard takes I/N, the I-th of N shares, from 1/N to N/N, not '${given}'.`);
}

/**
 * One share of a list whose order is always the same. Shares are dealt like cards: neighbours, which are often alike, are spread
 * over all of them. If there are more shares than plans, some are empty.
 */
export function shareOf<One>(all: readonly One[], { index, of }: AskedShard): readonly One[] {
  return all.filter((_, place) => place % of === index - 1);
}

/** The shares put together again, in the order of the whole list. All of them are required, in order. */
export function joinShares<One>(shares: readonly (readonly One[])[]): readonly One[] {
  const longest = Math.max(0, ...shares.map(({ length }) => length));
  return Array.from({ length: longest }, (_, place) => place).flatMap((place) =>
    shares.flatMap((share) => share.slice(place, place + 1)),
  );
}

/** The shard data of a report, given the names of all plans in their order. */
export function shardOf(asked: AskedShard, files: readonly string[]): Shard {
  return { ...asked, plans: files.length, digest: digestOf(files) };
}

/** How many plans a share has. */
export function shareLength({ index, of, plans }: Shard): number {
  return Math.floor((plans - index) / of) + 1;
}

export function digestOf(files: readonly string[]): string {
  return createHash("sha256").update(JSON.stringify(files)).digest("hex");
}
