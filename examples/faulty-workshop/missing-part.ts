import { circuit } from "loomwright";

// plan/cannot-run: a lamp is looked up that is not on the list.
const loads = new Map([["bench lamp", 2]]);

function loadOf(lamp: string): number {
  const load = loads.get(lamp);
  if (load === undefined) throw new Error(`no lamp called "${lamp}" is on the list`);
  return load;
}

circuit({
  name: "bench lamp",
  load: loadOf("bench lamp"),
  oneWayFt: 8,
  gauge: 16,
  insulationC: 105,
  protect: 3,
});
circuit({
  name: "ceiling lamp",
  load: loadOf("ceiling lamp"),
  oneWayFt: 12,
  gauge: 16,
  insulationC: 105,
  protect: 3,
});
