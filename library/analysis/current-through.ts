import type { Part } from "../model/network.ts";
import type { NetworkResult, WorstOf } from "./network-result.ts";

/** The maximum current through a part that only passes current on, in either direction, and its scenario. */
export function currentThrough({ parts }: NetworkResult, { index }: Part): WorstOf | undefined {
  const { feeds, draws } = parts[index] ?? {};
  return draws && (!feeds || draws.currentA > feeds.currentA) ? draws : feeds;
}
