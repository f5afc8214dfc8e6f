import { mendingTurns, nearestPlace } from "../../analysis/placement/nearest-place.ts";
import { type OfFault, onSurface } from "../board.ts";
import type { ProposedFix } from "../finding.ts";
import type { AskedAnswer } from "../rule.ts";
import { formatExact } from "../wording/format-number.ts";

/** The nearest place on the grid that mends the fault of a body. */
export function moveFixes({ of: { facts, fault } }: OfFault): AskedAnswer {
  const found = nearestPlace(facts, fault);
  const body = facts.layout.bodies[fault.body];
  if (body?.place?.kind !== "on surface") return { fixes: [] };
  if (!found) return { fixes: [], advice: "No place near it on its surface is free of faults." };
  const { right, down } = found.movedMm;
  const ways = [
    ...(right === 0 ? [] : [`${onSurface(body, Math.abs(right))} ${right > 0 ? "right" : "left"}`]),
    ...(down === 0 ? [] : [`${onSurface(body, Math.abs(down))} ${down > 0 ? "down" : "up"}`]),
  ];
  const unit = body.place.statedIn === "in" ? "In" : "Mm";
  const fix: ProposedFix = {
    title: `Move it ${ways.join(" and ")}`,
    kind: "suggestion",
    changes: [
      ...(right === 0 ? [] : [change(body.record, `left${unit}`, found.left)]),
      ...(down === 0 ? [] : [change(body.record, `top${unit}`, found.top)]),
    ],
  };
  return { fixes: [fix] };
}

/** The quarter turns that mend the fault of a body. */
export function turnFixes({ of: { facts, fault } }: OfFault): AskedAnswer {
  const record = facts.layout.bodies[fault.body]?.record;
  if (record === undefined) return { fixes: [] };
  return {
    fixes: mendingTurns(facts, fault).map((turn) => ({
      title: turn === 0 ? "Mount it upright" : `Turn it to ${formatExact(turn)}° clockwise`,
      kind: "suggestion",
      changes: [change(record, "turnedDeg", turn)],
    })),
  };
}

function change(record: number, property: string, value: number): ProposedFix["changes"][number] {
  return { do: "set", record, path: ["at", property], value };
}
