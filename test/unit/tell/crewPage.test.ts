import { describe, expect, it } from "vitest";
import { bookOf } from "../../../core/tell/book/book.ts";
import { crewPage } from "../../../core/tell/book/crewPage.ts";
import { readTripObject } from "../../../core/trip/readTrip.ts";
import type { CrewMember } from "../../../core/trip/types.ts";
import { plannedForecast } from "../fixtures/plannedForecast.ts";

const rich = plannedForecast();

/** Rows of the page's first table, as text by cell. */
function rows(crew: readonly CrewMember[]): string[][] {
  const trip = { ...rich.trip, party: { ...rich.trip.party, crew } };
  const book = bookOf({ ...rich, trip }, { units: "metric", made: "1 June 2027", paper: "A4", pictures: {} });
  const html = crewPage(book)
    .map((sheet) => sheet.html)
    .join("");
  const table = /<table[\s\S]*?<\/table>/.exec(html)![0];
  return [...table.matchAll(/<tr[\s\S]*?<\/tr>/g)]
    .slice(1)
    .map(([row]) =>
      [...row.matchAll(/<td[^>]*>([\s\S]*?)<\/td>/g)].map(([, cell]) => cell!.replace(/<[^>]+>/g, "")),
    );
}

const everything = ["food", "readings", "water", "ice", "washing"] as const;

describe("the crew page", () => {
  it("has a row for every day, and leaves room where nobody is named", () => {
    const all = rows([]);
    expect(all).toHaveLength(7);
    for (const [, food, readings, , , washing] of all)
      expect([food, readings, washing]).toEqual(["", "", ""]);
    // The invented plan fetches ice on some days only.
    const ice = all.map((row) => row[4]);
    expect(ice).toContain("–");
    expect(ice).toContain("");
  });

  it("lets people take turns in what they do, and asks nobody for what they do not", () => {
    const crew = [
      { name: "Ola", does: ["food"] as const },
      { name: "Min", does: everything },
      { name: "Tove", does: ["readings", "washing"] as const },
    ];
    const all = rows(crew);
    expect(all.slice(0, 4).map((row) => row[1])).toEqual(["Ola", "Min", "Ola", "Min"]);
    expect(all.slice(0, 3).map((row) => row[2])).toEqual(["Min", "Tove", "Min"]);
    expect(new Set(all.map((row) => row[4]))).toEqual(new Set(["–", "Min"]));
  });
});

describe("party.crew", () => {
  const trip = (crew: unknown): ReturnType<typeof readTripObject> =>
    readTripObject(
      {
        depart: "2027-06-18T08:00",
        return: "2027-06-19T18:00",
        party: { adults: 2, children: 0, vulnerable: false, crew },
        weather: { days: [{ high: "26 C", low: "20 C", humidity: "60 %", cloud: "20 %", wind: "2 m/s" }] },
        coolers: [{ name: "chest", size: "45 L", build: "standard" }],
      },
      { file: "trip" },
    );

  it("takes whoever is named without a duty for all of them", () => {
    const reading = trip([{ name: "Ola" }, { name: "Min", does: ["ice"] }]);
    expect(reading.ok && reading.trip.party.crew).toEqual([
      { name: "Ola", does: everything },
      { name: "Min", does: ["ice"] },
    ]);
  });

  it("refuses a duty that is none, with its place", () => {
    const reading = trip([{ name: "Ola", does: ["cooking"] }]);
    expect(reading.ok ? [] : reading.problems).toMatchObject([
      { path: "party.crew[0].does[0]", got: "cooking" },
    ]);
  });
});
