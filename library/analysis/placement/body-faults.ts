import { faultsBetweenBodies } from "./between-bodies.ts";
import { type BoardFacts, mountedBodies } from "./bodies.ts";
import type { BodyFault } from "./body-fault.ts";
import { type LugRoom, lugRoom } from "./lug-room.ts";
import { faultsOnSurface } from "./on-surface.ts";

/** Every fault of the bodies of a layout, from stated facts alone. */
export function bodyFaults(facts: BoardFacts): readonly BodyFault[] {
  const mounted = mountedBodies(facts.layout);
  return [
    ...faultsBetweenBodies(facts, mounted),
    ...mounted.flatMap((one) => faultsOnSurface(facts, one)),
    ...lugRoom(facts, mounted).faults,
  ];
}

/** The ends of conductors whose room cannot be judged. */
export function lugRoomNotJudged(facts: BoardFacts): LugRoom["notJudged"] {
  return lugRoom(facts, mountedBodies(facts.layout)).notJudged;
}
