import type { Channel, Surface } from "../../model/placement/layout.ts";
import type { Run } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
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
  const { layout } = placement;
  const onWay = onWayByRecord(placement);
  return runs.flatMap((run): readonly KinderSurroundings[] => {
    const { leads, places } = onWay.get(run.record) ?? { leads: [], places: [] };
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

/** The leads of each record, and the channels and surfaces along their ways. */
const onWayByRecord = workedOutOnce(({ layout, ways }: Placement) => {
  const byRecord = new Map<number, { readonly leads: number[]; readonly places: (Channel | Surface)[] }>();
  for (const { record, index } of layout.leads) {
    const { leads, places } = byRecord.get(record) ?? { leads: [], places: [] };
    leads.push(index);
    const way = ways[index]!;
    for (const { channel, surface } of way.state === "found" ? way.stretches : []) {
      const place = layout.channels[channel ?? -1] ?? layout.surfaces[surface ?? -1];
      if (place) places.push(place);
    }
    byRecord.set(record, { leads, places });
  }
  return byRecord;
});
