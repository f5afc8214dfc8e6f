import type { Side } from "../../model/placement/layout.ts";

/** One fault of a body where it is. Bodies are indices of the layout, fixtures and areas those of its surface. */
export type BodyFault = { readonly body: number } & (
  | {
      readonly kind: "overlap";
      readonly other: number;
      readonly acrossMm: number;
      readonly downMm: number;
    }
  | { readonly kind: "outside"; readonly side: Side; readonly byMm: number }
  | { readonly kind: "kept free"; readonly area: number }
  /** `channel`: its index in the layout. */
  | { readonly kind: "over channel"; readonly channel: number; readonly byMm: number }
  | {
      readonly kind: "air";
      readonly other: number;
      readonly side: Side;
      readonly isMm: number;
      readonly needsMm: number;
    }
  | { readonly kind: "position" }
  | {
      readonly kind: "lug room";
      readonly lead: number;
      readonly terminal: string;
      readonly isMm: number;
      readonly needsMm: number;
      readonly byDiameter: boolean;
      readonly obstacle: ObstacleOfLug;
    }
  | { readonly kind: "reach" }
  | { readonly kind: "bilge water"; readonly byMm: number }
  | {
      readonly kind: "fixture";
      readonly fixture: number;
      readonly isMm: number;
      readonly needsMm: number;
      readonly isOn: boolean;
    }
  | {
      readonly kind: "heat";
      readonly other: number;
      readonly how: "below" | "beside";
      readonly isMm: number;
    }
  | {
      readonly kind: "bus bars";
      readonly other: number;
      readonly isMm: number;
      /** The plan states that the terminals of both are bare. */
      readonly isBare: boolean;
    }
  | { readonly kind: "exposed" }
  | { readonly kind: "spill"; readonly other: number }
  | {
      readonly kind: "fuel";
      readonly fixture: number;
      readonly how: "above" | "below" | "over" | "near its top";
    }
);

export type FaultOf<Kind extends BodyFault["kind"]> = Extract<BodyFault, { readonly kind: Kind }>;

/** The same for the same fault of the same bodies. */
export function keyOfFault(fault: BodyFault): string {
  const about = ["other", "fixture", "area", "channel", "lead", "terminal"].map(
    (name) => (fault as unknown as Readonly<Record<string, unknown>>)[name] ?? "",
  );
  return [fault.kind, fault.body, ...about].join(" ");
}

/** The nearest thing in the way of a lug: the edge of the surface, a part, or a place kept free. */
export type ObstacleOfLug =
  | { readonly kind: "edge" }
  | { readonly kind: "body"; readonly body: number }
  | { readonly kind: "kept free"; readonly area: number };
