/** One bank with three loads on a bus bar, and a period; the hours of two loads and further properties of the bank may differ. */
export const plan = (
  period: string,
  { lamp = "use: { hoursPerDay: 1 }", pump = "use: { hoursPerDay: 0.5 }", house = "" } = {},
) => `
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 3 ${house} });
  const main = busBar({ side: "positive" });
  cable({ name: "feed", from: house.positive, to: main.stud, lengthFt: 2, gauge: 2 });
  const out = { from: main.stud, returnTo: house.negative, oneWayFt: 5, gauge: 10, protect: 10 };
  const lamp = circuit({ ...out, name: "lamp", load: 5, ${lamp} });
  const pump = circuit({ ...out, name: "pump", load: 6, ${pump} });
  const radio = circuit({ ...out, name: "radio", load: 4, use: { hoursPerDay: 1 } });
  const trip = period({ name: "trip", ${period} });`;

/** So many days of July from a full bank. */
export const july = (days: number) => `place: "Tarifa, ES", fromDay: "1 Jul", untilDay: "${days} Jul"`;

/** An array on a controller at that bank; the properties of both as code. */
export const roof = (array: string, controller: string) => `
  const roof = solarArray({ ${array} });
  const box = solarController({ maxInputV: 100, ${controller} });
  cable({ name: "roof plus", from: roof.positive, to: box.solarPositive, lengthFt: 6, gauge: 8 });
  cable({ name: "roof minus", from: roof.negative, to: box.solarNegative, lengthFt: 6, gauge: 8 });
  cable({ name: "box plus", from: box.positive, to: house.positive, lengthFt: 3, gauge: 6, protectFarEnd: 60 });
  cable({ name: "box minus", from: box.negative, to: house.negative, lengthFt: 3, gauge: 6 });`;
