import { build, circuit } from "loomwright";

// A river launch with an inboard petrol engine and one lead-acid battery: runs from the battery switch in the engine space,
// and from the helm panel forward. 33 CFR 183 is written for boats like this one.
build({ name: "river launch", voltage: 12, insulationC: 105 });

// In the engine space conductors start out hot: the engine-space factor cuts what they may carry.
const inEngineSpace = { engineSpace: true, sheathed: true } as const;

circuit({
  ...inEngineSpace,
  name: "helm panel feeder",
  load: 45,
  oneWayFt: 14,
  gauge: 1,
  critical: true,
  fromBattery: true,
  protect: { ratingA: 60, family: "ISO 8820-5 Type SF 30", distanceIn: 20 },
});
circuit({
  ...inEngineSpace,
  name: "engine-space blower",
  load: 6,
  oneWayFt: 12,
  gauge: 10,
  critical: true,
  protect: { ratingA: 10, family: "ISO 8820-3 Type C", distanceIn: 6 },
});
circuit({
  ...inEngineSpace,
  name: "bilge pump",
  load: 5,
  oneWayFt: 16,
  gauge: 10,
  critical: true,
  fromBattery: true,
  protect: { ratingA: 7.5, family: "ISO 8820-3 Type C", distanceIn: 18 },
});

// Forward of the bulkhead.
circuit({ name: "navigation lights", load: 2.5, oneWayFt: 18, gauge: 12, protect: 5, critical: true });
circuit({ name: "anchor light", load: 0.5, oneWayFt: 20, gauge: 16, protect: 2, critical: true });
circuit({ name: "horn", load: 5, continuous: false, oneWayFt: 12, gauge: 14, protect: 10 });
circuit({ name: "VHF radio", load: 5, oneWayFt: 8, gauge: 12, protect: 7.5, critical: true });
circuit({ name: "depth sounder", load: 1, oneWayFt: 10, gauge: 16, protect: 2, critical: true });
circuit({ name: "cabin lights", load: 2, oneWayFt: 12, gauge: 16, protect: 5 });
