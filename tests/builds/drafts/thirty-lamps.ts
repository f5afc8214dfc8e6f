import { build, circuit } from "loomwright";

// A dance tent: thirty lamps, one line of code, one size.
build({ name: "dance tent", voltage: 12, insulationC: 90 });

const lengths = [12, 18, 24, 30, 36, 42, 48, 54, 60, 66];
for (const [index, oneWayFt] of lengths.entries())
  for (const side of ["left", "middle", "right"])
    circuit({ name: `lamp ${index + 1} ${side}`, load: 3, oneWayFt, gauge: 18, protect: 20 });
