import { describe, expect, it } from "vitest";
import { bookOf } from "../../../core/tell/book/book.ts";
import { MOST_WORDS, tapeWords } from "../../../core/tell/book/coolerJob.ts";
import { drawing, list, sheetsOf } from "../../../core/tell/book/flow.ts";
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
      ...["Answer", "Ice", "Countdown", "Shopping", "Diets and allergens", "Cooler", "Labels", "Crew"],
      ...[
        "Day by day",
        "Menu",
        "Daily cards",
        "Drinks",
        "Eat next",
        "Food and clock",
        "Warm time",
        "Ice runs and merges",
      ],
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

/** What stands on the sheets of one thing, as text. */
const textOf = (title: string, book: readonly string[] = sheets): string =>
  book
    .filter((_, i) => about[i] === title)
    .join(" ")
    .replace(/<(?:title|desc)\b[^>]*>[^<]*<\/\w+>/g, "")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");

describe("the pages of a trip book", () => {
  it("show the whole trip on the first one, with ice runs and what is sealed", () => {
    expect(sheets[0]).toContain('aria-labelledby="title-strip desc-strip"');
    expect(textOf("Answer")).toContain("leave by Mon day 3, 13:30 (2 pieces for early)");
  });

  it("agree on how much ice there is to get", () => {
    // 3 blocks + 1 bag + 5 blocks + 6 jugs + 3 bags; 2 bags of 5 kg on the way.
    const total = /Ice to get before you go: 18 pieces, [\d.]+ kg[^.]*\.\d\d; on the way 10 kg/;
    const [onIce] = total.exec(textOf("Ice"))!;
    expect(textOf("Shopping")).toContain(onIce);
  });

  it("name the reserve for a warm load wherever ice is bought or packed, and only in its cooler", () => {
    const line = "Reserve for trout: 1 × 5-kg bag of cubes (5 kg) more in late";
    for (const title of ["Ice", "Shopping", "Big warm load"]) expect(textOf(title)).toContain(line);
    const coolers = sheets.filter((_, i) => about[i] === "Cooler");
    const told = coolers.filter((sheet) => sheet.includes("Reserve for trout"));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain("2 · late");
    const { warmLoad } = rich.result.plan!;
    const of = (pieces: number, holds: boolean): string => {
      const load = {
        ...warmLoad!,
        reserveIce_kg: 5 * pieces,
        reserve: { ...warmLoad!.reserve, pieces, holds },
      };
      return tripBook(plannedForecast({ plan: { warmLoad: load } }), options);
    };
    expect(of(0, true)).toContain("The ice that is planned is reserve enough.");
    expect(of(0, true)).not.toContain("Reserve for");
    expect(of(0, false)).toContain("none fits in late, and there is too little");
    expect(of(2, false)).toContain("It is what fits, and too little");
  });

  it("hold no path of the file and no command of the program", () => {
    for (const title of new Set(about)) expect(textOf(title)).not.toMatch(/\w\[\d+\]|`/);
  });

  it("give every reading of the trip a row: each cooler in use, when packed, at breakfast and dinner, at home", () => {
    const rows = [
      ...sheets
        .filter((_, i) => about[i] === "Temperature log")
        .join("")
        .matchAll(/data-head="Day, time">([^<]*)<.*?data-head="Cooler">([^<]*)</g),
    ];
    // Seven days: packed, dinner of day 1, both meals of days 2 to 6, breakfast of day 7, home: 14 readings of 4 coolers,
    // but frozen is emptied at 09:00 of day 5: five readings fewer.
    const count = (name: string): number => rows.filter(([, , cooler]) => cooler!.endsWith(name)).length;
    expect(["early", "late", "frozen", "drinks"].map(count)).toEqual([14, 14, 9, 14]);
    expect(rows[0]![1]).toBe("packed");
    expect(rows.at(-1)![1]).toBe("at home");
    expect(rows.map(([, when]) => when)).toContain("Wed 5, breakfast");
  });

  it("read an inspected trip at lunch too", () => {
    const inspected = tripBook(plannedForecast({ profile: "inspected" }), options);
    expect(inspected).toContain(">Sun 2, lunch<");
    expect(html).not.toContain(">Sun 2, lunch<");
  });

  it("give drinks their range where it is known, and say where it is not", () => {
    const told = textOf("Drinks");
    expect(told).toContain("85 g (71 g to 98 g)");
    expect(told).toMatch(/1 h 25 min \(1 h 10 min to 2 h 30 min\)/);
    const drinks = rich.result.plan!.drinks.map(({ bands: _, ...one }) => one);
    expect(tripBook(plannedForecast({ plan: { drinks } }), options)).toContain(
      "Likely values, without a range.",
    );
    expect(told).not.toContain("without a range");
  });

  it("draw what a merge is worth beside it", () => {
    const runs = sheets.filter((_, i) => about[i] === "Ice runs and merges").join("");
    expect(runs).toContain('aria-labelledby="title-merge0 desc-merge0"');
  });

  it("put the way in order: where the coolers stand, when to leave for ice, what is emptied, what may be opened", () => {
    const day = textOf("Day by day");
    const order = [
      "07:30 Depart",
      "10:30 Coolers into: camp",
      "13:30 Leave for ice",
      "16:00 2 × 5-kg bags of cubes into early",
      "18:30 late: the lid may be opened",
      "09:00 Empty frozen into late",
      "15:00 Return",
    ];
    const places = order.map((told) => day.indexOf(told));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  it("say a rule once, however many foods fall under it", () => {
    const eat = textOf("Eat next");
    const rules = new Set(rich.result.food.filter(({ perishable }) => perishable).map(({ rule }) => rule));
    for (const rule of rules)
      expect(eat.split(rule.replace(/"/g, "&quot;")).length - 1).toBeLessThanOrEqual(1);
    expect(eat).toContain("The rules A: ");
  });
});

describe("labels and cards", () => {
  it("say when a sealed cooler may be opened, what is raw, and what is not known of allergens", () => {
    const label = lidLabel(bookOf(rich, options), 1);
    expect(label).toContain("DO NOT OPEN BEFORE<br>Tue day 4, 18:30");
    expect(label).toContain("RAW below<br>READY TO EAT above");
    expect(label).toContain("may contain any");
    expect(lidLabel(bookOf(rich, options), 0)).not.toContain("DO NOT OPEN");
    // Raw and ready side by side in one layer: then nobody is told that raw is below.
    const layers = rich.result.plan!.layers.map((layer) => ({ ...layer, layer: 0 }));
    const level = bookOf(plannedForecast({ plan: { layers } }), options);
    expect(lidLabel(level, 1)).toContain("RAW in trays<br>and READY TO EAT");
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

  it("make a picture smaller rather than leave a sheet empty, but no smaller than it may be", () => {
    const svg = '<svg viewBox="0 0 100 100"></svg>';
    const tall = (least: number): number =>
      sheetsOf(
        [
          ...list(
            Array.from({ length: 12 }, () => "line"),
            "A4",
          ),
          drawing(svg, "A4", 1, least),
        ],
        "A4",
      ).length;
    // 18.6 cm tall; twelve lines take some 8 of the 25.
    expect(tall(1)).toBe(2);
    expect(tall(0.8)).toBe(1);
    expect(tall(0.97)).toBe(2);
  });

  it("take a row that is taller than a sheet, and end", () => {
    expect(
      sheetsOf([{ columns: [{ head: "", wide_frac: 1 }], rows: [{ cells: ["W".repeat(20_000)] }] }], "A4"),
    ).toHaveLength(1);
  });
});
