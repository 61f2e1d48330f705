import { expect, it } from "vitest";
import { runFleet, startFleet } from "../../../core/cooler/fleet.ts";
import type { FleetInput, Lot } from "../../../core/cooler/types.ts";
import { fleetOf } from "../../property/anyCooler.ts";
import { cooler, food, ice, trip } from "../../property/plainTrip.ts";

/** Every order of a short list. */
function orders<T>(list: readonly T[]): T[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, i) =>
    orders([...list.slice(0, i), ...list.slice(i + 1)]).map((rest) => [one, ...rest]),
  );
}

/** What lies where: kilograms of each lot by layer. */
function places(input: FleetInput): Map<string, number> {
  const fleet = startFleet(input);
  runFleet(fleet, 60);
  const rows = fleet.boxes[0].parts.map((part): [string, number] => [
    `${fleet.lots[part.lot].id} in ${part.layer}`,
    part.mass_kg,
  ]);
  return new Map(rows.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function inOrder(lots: readonly Lot[]): FleetInput {
  const input = fleetOf(trip());
  return { ...input, coolers: [{ ...input.coolers[0], lots }] };
}

function expectOnePlace(any: ReturnType<typeof cooler>): void {
  const { lots } = fleetOf(trip({ coolers: [any] })).coolers[0];
  const first = places(inOrder(lots));
  for (const order of orders(lots)) {
    const other = places(inOrder(order));
    expect([...other.keys()]).toEqual([...first.keys()]);
    for (const [key, mass_kg] of first) expect(other.get(key)).toBeCloseTo(mass_kg, 9);
  }
}

it("wishes for a row and no wishes, mixed, give one stack in whatever order they are listed", () => {
  expectOnePlace(
    cooler({
      ice: [ice({ mass_kg: 3 })],
      food: [
        food({ layer: 1, depth: 5, mass_kg: 6 }),
        food({ layer: null, depth: 10, mass_kg: 5 }),
        food({ layer: 2, depth: 20, mass_kg: 4 }),
        food({ layer: null, depth: 15, mass_kg: 3 }),
      ],
    }),
  );
});

it("blocks, jugs and packs likewise", () => {
  expectOnePlace(
    cooler({
      ice: [
        ice({ form: "block", mass_kg: 3 }),
        ice({ form: "jug", mass_kg: 3 }),
        ice({ form: "gel pack", mass_kg: 3, layer: 3 }),
      ],
      food: [food({ layer: 1, depth: 1 })],
    }),
  );
});
