import type { Part } from "../model/network.ts";
import type { NetworkResult, WorstOf } from "./network-result.ts";

/** The current that certainly flows through it at some time: the maximum, or the least while that is unknown. */
export function certainCurrentThrough(result: NetworkResult, part: Part): WorstOf | undefined {
  return currentThrough(result, part) ?? result.parts[part.index]?.least;
}

/** The maximum current through a part that only passes current on, in either direction, and its scenario. */
export function currentThrough({ parts }: NetworkResult, { index }: Part): WorstOf | undefined {
  const { feeds, draws } = parts[index] ?? {};
  return draws && (!feeds || draws.currentA > feeds.currentA) ? draws : feeds;
}
