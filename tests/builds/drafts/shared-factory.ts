import { build, circuit } from "loomwright";

// A function makes every cabin circuit, and its one size is wrong for most.
build({ name: "cabin", voltage: 12, insulationC: 75 });

function cabin(name: string, load: number, oneWayFt: number) {
  return circuit({ name, load, oneWayFt, gauge: 16, protect: 15 });
}
cabin("berth lamp", 1, 20);
cabin("fan", 4, 24);
cabin("water heater", 14, 9);
