import { describe, expect, it } from "vitest";
import { DomainError } from "../../core/quantity/errors.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import { tripsOf } from "../../core/trip/tripSource.ts";

const hours = Array.from({ length: 73 }, (_, i) => {
  const time = new Date(Date.UTC(2027, 5, 17, i)).toISOString().slice(0, 16);
  return `${time},${20 + (i % 24) / 2},40,2,0`;
});
const csv = `time,temp_C,humidity_pct,wind_m_per_s,ghi_W_per_m2\n${hours.join("\n")}\n`;
const text = `coldstow: 1
depart: 2027-06-18T06:30
return: 2027-06-19T06:30
place: { latitude: 40, longitude: 0, elevation: 0 m, timezone: UTC }
weather: { hourly: { file: sky.csv } }
coolers:
  - { name: galley, size: 45 qt, build: thick }
`;
const source = { text, file: "trip.yaml", beside: [["sky.csv", csv]] as const };

describe("a trip source", () => {
  it("survives the journey to a worker and is the same trip there, with the files it names", () => {
    const reading = readTrip(text, { file: "trip.yaml", readBeside: () => csv });
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const [trip] = tripsOf(structuredClone([source]));
    for (const t_s of [0, 5000, 80_000]) expect(trip!.weather.at(t_s)).toEqual(reading.trip.weather.at(t_s));
    expect(trip!.coolers).toEqual(reading.trip.coolers);
  });

  it("with a mistake is the caller's fault, with the place", () => {
    expect(() => tripsOf([{ ...source, beside: [] }])).toThrow(DomainError);
    expect(() => tripsOf([{ ...source, beside: [] }])).toThrow(/trip\.yaml: weather\.hourly\.file must/);
  });
});
