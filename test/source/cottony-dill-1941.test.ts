// cottony-dill-1941: Cottony, H. V., Dill, R. S. (1941), Solar heating of various surfaces, NBS Building Materials and Structures Report 64,
// read in a copy: in open sun bare foil gets hotter than white paint, since it hardly radiates. Only the sign is taken.
// Absorptance and emittance: foil 0.19 / 0.036, white paint 0.19–0.25 / 0.85–0.94.
import { expect, it } from "vitest";
import { insulatedSurface_C } from "../../core/sky/solAir.ts";

it.each([5, 8, 12])("foil is hotter than white paint, film %d W/m²K", (film) => {
  const foil_C = insulatedSurface_C(950, 0.19, 0.036, 30, 16, film);
  for (const [absorptance, emittance] of [
    [0.19, 0.94],
    [0.25, 0.85],
  ] as const) {
    expect(foil_C).toBeGreaterThan(insulatedSurface_C(950, absorptance, emittance, 30, 16, film));
  }
});
