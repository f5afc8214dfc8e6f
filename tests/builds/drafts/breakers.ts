import { build, circuit } from "loomwright";

// A stage with breakers of one size.
build({ name: "stage", voltage: 12, insulationC: 75 });

const breakerA = { ratingA: 30, family: "circuit breaker", interruptingA: 3000, ratedV: 48 } as const;
circuit({ name: "front lamps", load: 12, oneWayFt: 22, gauge: 14, protect: breakerA });
circuit({ name: "back lamps", load: 6, oneWayFt: 40, gauge: 16, protect: breakerA });
circuit({ name: "curtain motor", load: 28, continuous: false, oneWayFt: 12, gauge: 12, protect: breakerA });
