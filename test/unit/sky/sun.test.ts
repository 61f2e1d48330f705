import { describe, expect, it } from "vitest";
import { localClock_s, localInstant_ms } from "../../../core/sky/localTime.ts";
import { extraterrestrialNormal_W_per_m2, type Place, sunDay, sunHeight_deg } from "../../../core/sky/sun.ts";

const canyon: Place = {
  latitude_deg: 38.6,
  longitude_deg: -109.6,
  elevation_m: 1250,
  timezone: "America/Denver",
};
const far = (latitude_deg: number): Place => ({
  ...canyon,
  latitude_deg,
  longitude_deg: 20,
  timezone: "UTC",
});

describe("the sun", () => {
  it("stands at 90° − latitude + declination at noon of the solstice", () => {
    const { noon_ms } = sunDay(localInstant_ms("2027-06-21T12:00", canyon.timezone), canyon);
    expect(sunHeight_deg(noon_ms, canyon)).toBeCloseTo(90 - 38.6 + 23.44, 1);
  });

  it("rises and sets when its upper edge, lifted by refraction, meets the horizon", () => {
    const { rise_ms, set_ms, noon_ms, light_s } = sunDay(
      localInstant_ms("2027-06-18T12:00", canyon.timezone),
      canyon,
    );
    for (const edge_ms of [rise_ms!, set_ms!])
      expect(Math.abs(sunHeight_deg(edge_ms, canyon))).toBeLessThan(0.4);
    expect(light_s).toBe((set_ms! - rise_ms!) / 1000);
    expect(Math.abs((rise_ms! + set_ms!) / 2 - noon_ms)).toBeLessThan(60_000);
    // Daylight-saving noon of a place 4.6° west of its meridian, with the equation of time: 13:20.
    expect(Math.abs(localClock_s(noon_ms, canyon.timezone) - 13.33 * 3600)).toBeLessThan(180);
  });

  it("day length is that of the sunset equation with −0.833°, within two minutes", () => {
    const rad = Math.PI / 180;
    const declination = 23.41 * rad;
    const latitude = 38.6 * rad;
    const cosine =
      (Math.sin(-0.833 * rad) - Math.sin(latitude) * Math.sin(declination)) /
      (Math.cos(latitude) * Math.cos(declination));
    const expected_s = ((2 * Math.acos(cosine)) / rad / 15) * 3600;
    const { light_s } = sunDay(localInstant_ms("2027-06-18T12:00", canyon.timezone), canyon);
    expect(Math.abs(light_s - expected_s)).toBeLessThan(120);
  });

  it("stays up or down all day beyond the polar circle", () => {
    expect(sunDay(Date.UTC(2027, 5, 21, 12), far(75))).toMatchObject({
      rise_ms: null,
      set_ms: null,
      light_s: 86_400,
    });
    expect(sunDay(Date.UTC(2027, 11, 21, 12), far(75))).toMatchObject({
      rise_ms: null,
      set_ms: null,
      light_s: 0,
    });
  });

  it("is 6.8 % stronger in January than in July outside the atmosphere", () => {
    const ratio =
      extraterrestrialNormal_W_per_m2(Date.UTC(2027, 0, 3)) /
      extraterrestrialNormal_W_per_m2(Date.UTC(2027, 6, 4));
    expect(ratio).toBeCloseTo((1 + 0.033) / (1 - 0.033), 3);
  });
});
