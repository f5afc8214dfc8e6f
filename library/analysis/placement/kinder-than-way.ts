import type { Run } from "../../model/run.ts";
import type { Placement } from "./placement.ts";
import type { Bundle } from "./shared-channels.ts";

/** A surrounding that the plan states for a run, and that is kinder to it than a place on its way. */
export interface KinderSurroundings {
  readonly run: Run;
  readonly property: "ambientC" | "engineSpace" | "bundledWith";
  readonly stated: number;
  /** At that place: °C, or the number of conductors. */
  readonly there: number;
  /** The name of the channel or surface. */
  readonly place: string;
}

/**
 * The stated ambients, engine spaces and numbers of conductors together that are below those on the way. A value that the plan states
 * for the run, or one that a place leaves to the build, has no such place.
 */
export function kinderThanWay(
  placement: Placement,
  runs: readonly Run[],
  bundles: readonly Bundle[],
): readonly KinderSurroundings[] {
  const { layout, ways } = placement;
  const leadsOf = new Map<number, number[]>();
  for (const { record, index } of layout.leads) {
    const known = leadsOf.get(record) ?? [];
    known.push(index);
    leadsOf.set(record, known);
  }
  return runs.flatMap((run): readonly KinderSurroundings[] => {
    const leads = leadsOf.get(run.record) ?? [];
    const places = leads.flatMap((lead) => {
      const way = ways[lead]!;
      if (way.state !== "found") return [];
      return way.stretches.flatMap(
        ({ channel, surface }) => layout.channels[channel ?? -1] ?? layout.surfaces[surface ?? -1] ?? [],
      );
    });
    const found: KinderSurroundings[] = [];
    const taken = (name: string) => run.places?.find((place) => place.name === name) ?? run;
    const hottest = places
      .filter(({ name, ambientC }) => ambientC !== undefined && ambientC > taken(name).ambientC)
      .sort((one, other) => other.ambientC! - one.ambientC!)[0];
    if (hottest)
      found.push({
        ...{ run, property: "ambientC", place: hottest.name },
        ...{ stated: taken(hottest.name).ambientC, there: hottest.ambientC! },
      });
    const engine = places.find(({ name, engineSpace }) => engineSpace && !taken(name).engineSpace);
    if (engine) found.push({ run, property: "engineSpace", place: engine.name, stated: 0, there: 1 });
    const [most] = leads
      .map((lead) => bundles[lead])
      .sort((one, other) => (other?.others ?? 0) - (one?.others ?? 0));
    if (run.bundledWithStated && most && most.others > run.bundledWith)
      found.push({
        ...{ run, property: "bundledWith", place: layout.channels[most.channel!]!.name },
        ...{ stated: run.bundledWith, there: most.others },
      });
    return found;
  });
}
