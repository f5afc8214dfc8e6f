import type { Citation } from "./citation.ts";

const subpartI = "33 CFR 183 (Boats and Associated Equipment), Subpart I (Electrical Systems)";

/** A component that is not ignition protected, and a source of petrol vapour without a bulkhead between. */
export const fromPetrol = {
  source: {
    document: subpartI,
    section: "183.410(b)(3)",
    authority: "regulation",
    confirmed: "read",
    note: "Of a component that is not ignition protected, and only where the space between is open to the atmosphere.",
  } satisfies Citation,
  leastFt: 2,
} as const;

/** No battery is directly above or below a fuel tank, fuel filter or fuel fitting. */
export const batteryAtFuelTank: Citation = {
  document: subpartI,
  section: "183.420(d)",
  authority: "regulation",
  confirmed: "read",
  note: "ISO 10133:2012 5.6 asks the same.",
};

/** Metal fuel parts within this distance above the plane of a battery's top are shielded with dielectric material. */
export const fuelAboveBattery = {
  source: {
    document: subpartI,
    section: "183.420(c)",
    authority: "regulation",
    confirmed: "read",
    note: "ISO 10133:2012 5.7 asks the same.",
  } satisfies Citation,
  withinIn: 12,
} as const;

/** An ungrounded terminal that is always live has a boot, cap, cover or shield. */
export const coveredTerminals: Citation = {
  document: subpartI,
  section: "183.445(b)",
  authority: "regulation",
  confirmed: "read",
  note: "Of terminals and studs that are continuously energised, unless 183.455 protects them. Of batteries, 183.420(b): no metallic object can come in contact with the ungrounded terminals.",
};

/** Batteries are dry, ventilated and above the expected bilge water. */
export const batteryAboveBilgeWater: Citation = {
  document: "ISO 10133",
  section: "5.1",
  edition: "2012",
  authority: "standard",
  confirmed: "read",
  note: "Withdrawn, followed by ISO 13297:2020.",
};

/** The length of a spanner for the studs of bus bars: it must not reach from one to the other. */
export const spanner = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "A spanner for M8 nuts is about 150 mm long; the one that you use counts.",
  } satisfies Citation,
  lengthMm: 150,
} as const;

/** A part that must stay cool, and one beside it that gives off heat. */
export const besideHeat = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Warm air rises: the warm part is above, or 100 mm away at the side. The maker's figure comes first.",
  } satisfies Citation,
  leastMm: 100,
} as const;
