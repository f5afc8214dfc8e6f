import { type BoardFacts, boardFacts, partsByRecord } from "../analysis/placement/bodies.ts";
import type { BodyFault, FaultOf } from "../analysis/placement/body-fault.ts";
import { bodyFaults } from "../analysis/placement/body-faults.ts";
import type { Body, Surface } from "../model/placement/layout.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import type { Found, JudgedPlan } from "./rule.ts";
import { formatDistinctWithUnit, withUnit } from "./wording/format-number.ts";
import { atStart, partInWords } from "./wording/part-in-words.ts";

/** A finding about a body where it is. */
export interface BodyFound<Kind extends BodyFault["kind"]> {
  readonly fault: FaultOf<Kind>;
  readonly body: Body;
  readonly surface: Surface;
  readonly facts: BoardFacts;
}

/** The fault itself, for the fixes that are worked out when somebody asks. */
export interface OfFault {
  readonly of: { readonly facts: BoardFacts; readonly fault: BodyFault };
}

/**
 * For rules about bodies on surfaces: a finding for each fault of a kind, on the place of the body. `other`: the index of a further body
 * that it is about, which tells two findings about one body apart.
 */
export function perBodyFault<Kind extends BodyFault["kind"], Values extends OfFault>(
  plan: JudgedPlan,
  kind: Kind,
  check: (found: BodyFound<Kind>) => Omit<Found<Values>, "subject" | "at" | "values"> & {
    readonly values: Omit<Values, "of">;
    readonly other?: number;
  },
): Found<Values>[] {
  const board = boardOf(plan);
  if (!board) return [];
  const { facts } = board;
  return board.faults.flatMap((fault) => {
    if (fault.kind !== kind) return [];
    const body = facts.layout.bodies[fault.body];
    if (body?.place?.kind !== "on surface") return [];
    const surface = facts.layout.surfaces[body.place.surface]!;
    const { other, values, ...found } = check({ fault: fault as FaultOf<Kind>, body, surface, facts });
    const about = facts.layout.bodies[other ?? -1];
    return [
      {
        related: about
          ? [{ at: { record: about.record, path: ["at"] }, text: atStart(inWords(plan, about)) }]
          : [],
        ...(about && { ofRecord: about.record }),
        ...found,
        subject: body.name,
        at: { record: body.record, path: ["at"] },
        values: { ...values, of: { facts, fault } } as unknown as Values,
      },
    ];
  });
}

/** The facts by which bodies are judged, and their faults; undefined if the plan has no surface. */
export const boardOf = workedOutOnce(({ placement, network }: JudgedPlan) => {
  if (!placement) return undefined;
  const facts = boardFacts(
    placement.layout,
    network && { network: network.network, sides: network.result.topology.sides },
  );
  return { facts, faults: bodyFaults(facts) };
});

/** "the battery house"; a body without a part in the network by its name alone. */
export function inWords({ network }: JudgedPlan, body: Body): string {
  const part = network && partsByRecord(network.network).get(body.record);
  return part ? partInWords(part) : body.name;
}

/** The same for the body with an index. */
export function bodyInWords(plan: JudgedPlan, index: number): string {
  const body = plan.placement?.layout.bodies[index];
  return body ? inWords(plan, body) : "";
}

/** A length on a surface, in the unit in which the plan states the place of a body: "45 mm", "1.75 in". */
export function onSurface(body: Body, mm: number): string {
  return withUnit(inUnitOf(body, mm), unitOf(body));
}

/** Two lengths as {@link onSurface}, as different as they are. */
export function distinctOnSurface(body: Body, oneMm: number, otherMm: number): readonly [string, string] {
  return formatDistinctWithUnit(inUnitOf(body, oneMm), inUnitOf(body, otherMm), unitOf(body));
}

function inUnitOf(body: Body, mm: number): number {
  return unitOf(body) === "in" ? Number((mm / mmPerInch).toFixed(6)) : mm;
}

function unitOf({ place }: Body): "mm" | "in" {
  return (place?.kind === "on surface" && place.statedIn) || "mm";
}

const mmPerInch = 25.4;
