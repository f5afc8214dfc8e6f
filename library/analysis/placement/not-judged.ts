import type { Body } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { type BoardFacts, givesHeat, mountedBodies, partOf, withOutline } from "./bodies.ts";
import { lugRoom } from "./lug-room.ts";

/** The bodies about which a plan with surfaces states too little for a check, in the order of the plan. */
export interface PlacementNotJudged {
  readonly withoutPlace: readonly Body[];
  readonly withoutSize: readonly Body[];
  /** Of those that give off heat. */
  readonly withoutAir: readonly Body[];
  /** Of those that give off heat, and of batteries. */
  readonly withoutPositions: readonly Body[];
  /** Those at which a thick conductor ends whose room cannot be judged. */
  readonly withoutTerminals: readonly Body[];
}

export const placementNotJudged = workedOutOnce((facts: BoardFacts): PlacementNotJudged => {
  const { bodies } = facts.layout;
  const mounted = mountedBodies(facts.layout);
  const on = mounted.map(({ body }) => body);
  const sized = new Set(withOutline(mounted).map(({ body }) => body));
  const ends = new Set(lugRoom(facts).notJudged.map(({ body }) => bodies[body]!));
  return {
    withoutPlace: bodies.filter(({ place }) => place === undefined),
    withoutSize: on.filter((body) => body.mountedOn === undefined && !sized.has(body)),
    withoutAir: on.filter((body) => givesHeat(facts, body) && Object.keys(body.air).length === 0),
    withoutPositions: on.filter(
      (body) =>
        !body.mountingPositions && (givesHeat(facts, body) || partOf(facts, body)?.kind === "battery"),
    ),
    withoutTerminals: on.filter((body) => ends.has(body)),
  };
});
