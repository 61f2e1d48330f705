// Haurwitz, B. (1945), Insolation in relation to cloudiness and cloud density, J. Meteorol. 2:154–166. The paper was not
// read; expected values are those that pvlib-python prints in its test of the same model (apparent sun heights in
// degrees, W/m²). Tolerance 5e-5 W/m²: the same formula, with the sine kept to 1.5e-8 (core/quantity/steady.ts) times 1100 W/m².
import { expect, it } from "vitest";
import { clearSky_W_per_m2 } from "../../core/sky/clearSky.ts";

it.each([
  [-20, 0],
  [-0.05, 0],
  [-0.001, 0],
  [5, 48.6298687941956],
  [10, 135.741748091813],
  [30, 487.894132885425],
  [50, 778.766689344363],
  [90, 1035.0920325345],
])("sun at %d°: %d W/m²", (height_deg, expected) => {
  expect(clearSky_W_per_m2(height_deg)).toBeCloseTo(expected, 4);
});

it("with the exponent 0.057 of other reviews the sun would be stronger by 0.2 % overhead and 1.2 % at 10°", () => {
  const other = (height_deg: number): number => {
    const zenith = ((90 - height_deg) * Math.PI) / 180;
    return 1098 * Math.cos(zenith) * Math.exp(-0.057 / Math.cos(zenith));
  };
  expect(other(90) / clearSky_W_per_m2(90) - 1).toBeCloseTo(0.002, 3);
  expect(other(10) / clearSky_W_per_m2(10) - 1).toBeCloseTo(0.0116, 3);
});
