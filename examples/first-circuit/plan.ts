import { circuit } from "loomwright";

// One run: a compressor cool box, 15 ft from the fuse panel, on 10 AWG wire behind a 15 A fuse.
circuit({ name: "cool box", load: 8, oneWayFt: 15, gauge: 10, protect: 10, insulationC: 105 });
