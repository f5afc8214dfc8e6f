import { workedOutOnce } from "../../model/worked-out-once.ts";
import { faultsBetweenBodies } from "./between-bodies.ts";
import { type BoardFacts, mountedBodies } from "./bodies.ts";
import type { BodyFault } from "./body-fault.ts";
import { lugRoom } from "./lug-room.ts";
import { faultsOnSurface } from "./on-surface.ts";

/** Every fault of the bodies of a layout, from stated facts alone. */
export const bodyFaults = workedOutOnce((facts: BoardFacts): readonly BodyFault[] => {
  const mounted = mountedBodies(facts.layout);
  return [
    ...faultsBetweenBodies(facts, mounted),
    ...mounted.flatMap((one) => faultsOnSurface(facts, one)),
    ...lugRoom(facts).faults,
  ];
});
