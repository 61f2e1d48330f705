import { expect, it } from "vitest";
import { forecast } from "../../core/forecast/forecast.ts";
import { readTrip } from "../../core/trip/readTrip.ts";

it("ice that lay in raw juice takes it along into another cooler", () => {
  const text = `
coldstow: 1
depart: 2027-07-16T09:00
return: 2027-07-18T14:00
party: { adults: 2, vulnerable: false }
coolers: [{ name: a, size: 50 L }, { name: b, size: 50 L }]
food:
  - { name: chicken thigh, amount: 1 kg, raw: true, state: chilled, at: 3 C, in: a, eat: day 1 dinner, watertight: false }
  - { name: ham, amount: 1 kg, state: chilled, at: 1 C, in: b, eat: day 3 lunch, layer: base, watertight: false }
ice:
  - { form: cube, pieces: 5, each: 2 kg, in: a }
  - { form: cube, pieces: 8, each: 2 kg, in: b }
events: [{ at: day 2 09:00, do: merge, from: a, into: b }]
`;
  const reading = readTrip(text, { file: "juice.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { food } = forecast(reading.trip, { effects: false }).result;
  expect(food.find(({ name }) => name === "ham")?.verdict).toBe("discard");
});
