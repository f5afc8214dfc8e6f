import { build, circuit } from "loomwright";

// A bird hide in a marsh: 12 V, metric cable with two cores in a sheath, thin loads and long runs.
build({ name: "bird hide", voltage: 12, insulationC: 70 });

function camera(name: string, oneWayM: number) {
  return circuit({ name, loadW: 6, minimumV: 9, oneWayM, mm2: 1.5, sheathed: true, protect: 2 });
}
camera("nest camera", 14);
camera("reed camera", 22);
circuit({ name: "floor lamps", load: 0.8, oneWayM: 6, mm2: 1, sheathed: true, protect: 2 });
circuit({
  name: "radio link",
  loadW: 8,
  minimumV: 11,
  oneWayM: 5,
  mm2: 1.5,
  sheathed: true,
  critical: true,
  protect: 2,
});
