// ASTM E1980, Standard Practice for Calculating Solar Reflectance Index: reference conditions 1000 W/m², air 310 K,
// sky 300 K, films 5, 12 and 30 W/m²K, insulated behind. The conditions are as quoted elsewhere; the temperatures were
// computed from them by others and rounded to 0.1 °C. Tolerance ±0.5 K: one rounding and either Stefan–Boltzmann value.
import { expect, it } from "vitest";
import { insulatedSurface_C } from "../../core/sky/solAir.ts";

const air_C = 310 - 273.15;
const sky_C = 300 - 273.15;

it.each([
  { colour: "black", absorptance: 0.95, film: 5, expected_C: 103.7 },
  { colour: "black", absorptance: 0.95, film: 12, expected_C: 82.5 },
  { colour: "black", absorptance: 0.95, film: 30, expected_C: 61.1 },
  { colour: "white", absorptance: 0.2, film: 5, expected_C: 49.3 },
  { colour: "white", absorptance: 0.2, film: 12, expected_C: 44.6 },
  { colour: "white", absorptance: 0.2, film: 30, expected_C: 40.8 },
])("$colour face, film $film W/m²K: $expected_C °C", ({ absorptance, film, expected_C }) => {
  const face_C = insulatedSurface_C(1000, absorptance, 0.9, air_C, sky_C, film);
  expect(Math.abs(face_C - expected_C)).toBeLessThan(0.5);
});

it("a face without sun lies between sky and air", () => {
  const face_C = insulatedSurface_C(0, 0.5, 0.9, air_C, sky_C, 12);
  expect(face_C).toBeGreaterThan(sky_C);
  expect(face_C).toBeLessThan(air_C);
});
