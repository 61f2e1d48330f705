// Allen, Pereira, Raes, Smith (1998), Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, example 8: daily
// extraterrestrial radiation at 20° S on 3 September. Known to us as quoted in the tests of public implementations
// (declination 0.120, sunset hour angle 1.527, relative distance 0.985; 32.2 MJ/m²), the page itself from memory.
import { expect, it } from "vitest";
import { extraterrestrialNormal_W_per_m2, sunHeight_deg } from "../../core/sky/sun.ts";

const place = { latitude_deg: -20, longitude_deg: 0, elevation_m: 0, timezone: "UTC" };
const start_ms = Date.UTC(2027, 8, 3);

it("the paper's own closed form gives the printed 32.2 (the numbers were read right)", () => {
  const [latitude, declination, sunset, distance] = [(-20 * Math.PI) / 180, 0.12, 1.527, 0.985];
  const day =
    sunset * Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset);
  expect(((24 * 60) / Math.PI) * 0.082 * distance * day).toBeCloseTo(32.2, 1);
});

it("our sun, summed over that day, gives 32.2 MJ/m² within 1 %", () => {
  // 1 %: the paper takes one declination for the day and no refraction, and a mean year.
  let sum_J = 0;
  for (let t_s = 30; t_s < 86_400; t_s += 60) {
    const instant_ms = start_ms + t_s * 1000;
    const sine = Math.sin((sunHeight_deg(instant_ms, place) * Math.PI) / 180);
    sum_J += Math.max(0, sine) * extraterrestrialNormal_W_per_m2(instant_ms) * 60;
  }
  expect(Math.abs(sum_J / 1e6 / 32.2 - 1)).toBeLessThan(0.01);
});
