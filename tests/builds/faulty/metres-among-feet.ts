import { build, circuit } from "loomwright";

// A hay trailer: every run is in feet, and one says metres.
// Expected: info plan/unit-suspect at tail lamps
// Because: No clause: a length of 14 m among runs of 9 to 18 ft in one small trailer was meant in feet.
build({ name: "metres among feet", voltage: 12, insulationC: 105 });

circuit({ name: "work lamps", load: 3, oneWayFt: 9, gauge: 14, protect: 5 });
circuit({ name: "step lamps", load: 1, oneWayFt: 11, gauge: 14, protect: 3 });
circuit({ name: "plough lamps", load: 2, oneWayFt: 18, gauge: 14, protect: 5 });
circuit({ name: "tail lamps", load: 2, oneWayM: 14, gauge: 14, protect: 5 });
