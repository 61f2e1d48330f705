import { describe, expect, it } from "vitest";
import { bookOf } from "../../../core/tell/book/book.ts";
import { MOST_WORDS, tapeWords } from "../../../core/tell/book/coolerJob.ts";
import { sheetsOf } from "../../../core/tell/book/flow.ts";
import { lidLabel } from "../../../core/tell/book/labelPages.ts";
import type { BookOptions } from "../../../core/tell/book/options.ts";
import { pullCards } from "../../../core/tell/book/pullPages.ts";
import { tripBook } from "../../../core/tell/book/tripBook.ts";
import { inventedForecast } from "../fixtures/forecast.ts";
import { plannedForecast } from "../fixtures/plannedForecast.ts";

const options: BookOptions = { units: "metric", made: "1 June 2027", paper: "A4", pictures: {} };
const rich = plannedForecast();
const html = tripBook(rich, options);
const sheets = html.split('<section class="sheet">').slice(1);
const about = sheets.map((sheet) => /<span>([^·<]+) ·/.exec(sheet)![1]!.replace(/(?:,? \d+)+$/, ""));
const hostile = ` <script>alert("x")</script> \u05d0\u05d1 & 'y' ${"W".repeat(120)}`;

describe("a trip book", () => {
  it("has its pages in the order in which a trip is prepared, run and closed", () => {
    expect([...new Set(about)]).toEqual([
      ...["Answer", "Ice", "Countdown", "Shopping", "Diets and allergens", "Cooler", "Labels", "Menu"],
      ...["Daily cards", "Drinks", "Eat next", "Food and clock", "Warm time", "Ice runs and merges"],
      ...["Big warm load", "Temperature log", "Rules", "Close-out", "Cautions"],
    ]);
  });

  it("says on every sheet what trip, when made, which limit, that nothing was measured, and which page", () => {
    sheets.forEach((sheet, i) => {
      expect(sheet).toContain("Larch Lake, seven days");
      expect(sheet).toContain("Made 1 June 2027 · reckoned, not measured");
      expect(sheet).toContain("(consumer)");
      expect(sheet).toContain(`page ${i + 1} of ${sheets.length}<`);
    });
  });

  it("holds no script, fetches nothing, and calls nothing safe", () => {
    expect(html).not.toMatch(/<script|<link|<img|<iframe|@import|(?:src|href)=|url\((?!#)/i);
    expect(html.replace(/xmlns="[^"]+"/g, "")).not.toMatch(/https?:/);
    expect(html).not.toMatch(/\b(?:un)?safe(?:ly)?\b/i);
  });

  it("tells what a person typed as text, whatever it holds", () => {
    const otherwise = [{ says: `\u202e${hostile}\u2066`, foodGain_h: null, iceGain_h: null }];
    const book = tripBook(plannedForecast({ namesEnd: hostile, plan: { otherwise } }), options);
    expect(book).not.toMatch(/<script/i);
    expect(book).toContain("&lt;script&gt;");
    expect(book).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
    expect(book.split("<section").length).toBe(book.split("</section>").length);
  });

  it("leaves out a page that has nothing to tell", () => {
    const bare = plannedForecast({
      plan: {
        prep: [],
        pull: [],
        drinks: [],
        iceRuns: [],
        merges: [],
        warmLoad: null,
        layers: [],
        otherwise: [],
      },
    });
    const told = tripBook(bare, options);
    for (const title of [
      "Countdown",
      "Daily cards",
      "Drinks",
      "Ice runs and merges",
      "Big warm load",
      "Menu",
    ])
      expect(told).not.toContain(`<span>${title} ·`);
    expect(told).toContain("What goes in");
  });

  it("refuses a forecast without a plan", () => {
    expect(() => tripBook(inventedForecast(), options)).toThrow("must hold a plan");
  });

  it("asks an inspected trip what was done about a reading", () => {
    const inspected = tripBook(plannedForecast({ profile: "inspected" }), options);
    expect(inspected).toContain("Inspector&#39;s log");
    expect(inspected).toContain("What was done about it");
    expect(html).not.toContain("What was done about it");
  });

  it("draws the map with the top row on top and numbers it from the base", () => {
    const rows = [
      ...sheets[about.indexOf("Cooler")]!.matchAll(/<td class="strong" data-head="Row">([^<]+)</g),
    ];
    expect(rows.map((row) => row[1])).toEqual(["5 top", "4", "3", "2", "1 base"]);
  });

  it("says of ice bought and frozen where and by when, and what it costs in all", () => {
    const ice = sheets[about.indexOf("Ice")]!;
    expect(ice).toContain("8 × 5-kg blocks");
    expect(ice).toContain("Fri 6 Aug, 17:00");
    expect(ice).toContain("48.00");
    expect(ice).toContain("3 early, 5 late");
  });
});

describe("labels and cards", () => {
  it("say when a sealed cooler may be opened, what is raw, and what is not known of allergens", () => {
    const label = lidLabel(bookOf(rich, options), 1);
    expect(label).toContain("DO NOT OPEN BEFORE<br>Tue day 4, 18:30");
    expect(label).toContain("RAW below<br>READY TO EAT above");
    expect(label).toContain("may contain any");
    expect(lidLabel(bookOf(rich, options), 0)).not.toContain("DO NOT OPEN");
    expect(lidLabel(bookOf(rich, { ...options, units: "us" }), 1)).toContain("157 lb (71 kg)");
  });

  it.each(["", " late dinner box for everybody", hostile])(
    "have at most eight words for tape (%#)",
    (namesEnd) => {
      const book = bookOf(plannedForecast({ namesEnd }), options);
      for (const cooler of [0, 1, 2, 3]) {
        const words = tapeWords(book, cooler).split(/\s+/);
        expect(words.length).toBeLessThanOrEqual(MOST_WORDS);
        expect(words[0]).toBe(String(cooler + 1));
      }
      expect(tapeWords(book, 1)).toContain("not before Tue 18:30");
      expect(MOST_WORDS).toBe(8);
    },
  );

  it("take a meal out of each cooler in one opening, and go on over as many cards as it needs", () => {
    const take = Array.from({ length: 40 }, (_, i) => ({
      item: `food ${i}`,
      amount: "1 kg",
      cooler: "late",
      from: "row 3",
    }));
    const cards = pullCards(
      { at: "2027-08-09T18:30", day: 3, meal: "dinner", take, thaw: [], back: [] },
      bookOf(rich, options),
    );
    expect(cards.length).toBeGreaterThan(1);
    expect(cards.join("").match(/one opening/g)).toHaveLength(1);
    for (const { item } of take) expect(cards.join("")).toContain(`${item} 1 kg`);
  });
});

describe("sheets", () => {
  const table = (count: number): Parameters<typeof sheetsOf>[0] => [
    {
      columns: [{ head: "What", wide_frac: 1 }],
      rows: Array.from({ length: count }, (_, i) => ({ cells: [`row ${i}.`] })),
    },
  ];

  it("cut a long table between rows, give it its head again, and lose no row", () => {
    const cut = sheetsOf(table(400), "Letter");
    expect(cut.length).toBeGreaterThan(5);
    expect(cut.every((sheet) => sheet.includes("<th"))).toBe(true);
    const told = cut.join("");
    for (let i = 0; i < 400; i++) expect(told.split(`>row ${i}.<`)).toHaveLength(2);
  });

  it("take a row that is taller than a sheet, and end", () => {
    expect(
      sheetsOf([{ columns: [{ head: "", wide_frac: 1 }], rows: [{ cells: ["W".repeat(20_000)] }] }], "A4"),
    ).toHaveLength(1);
  });
});
