import { execFile } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { build, folderWith, program } from "./build.ts";

/* Menus that nobody would write on a good day, through the built program: it answers each in plain words. */

beforeAll(build);

const head = (returns = "2027-06-20T15:00"): string => `coldstow: 1
title: Odd trip
depart: 2027-06-18T07:00
return: ${returns}
party: { adults: 2, vulnerable: false }
weather: { days: [{ high: 29 C, low: 17 C, humidity: 55 %, cloud: 20 %, wind: 2 m/s }] }
legs: [{ where: camp, shade: 80 % }]
`;
const coolers = (count = 1, size = "50 L"): string =>
  `coolers:\n${Array.from({ length: count }, (_, i) => `  - { name: box ${i + 1}, size: ${size}, build: thick, start: { at: 8 C } }\n`).join("")}`;
const stew = "food:\n  - { name: stew, amount: 2 kg, like: stew, watertight: true, eat: day 2 dinner }\n";
const shop = `supply:
  - { form: block, each: 4 kg, at: -10 C, where: ice works }
  - { form: cube, each: 4 kg, at: -2 C, where: shop }
`;
const freezer = "freezer: { space: 60 L, at: -17 C }\n";
const kinds = ["stew", "ham", "cheddar", "yogurt", "apple"];
const items = (count: number): string =>
  `food:\n${Array.from({ length: count }, (_, i) => `  - { name: item ${i + 1}, amount: 100 g, like: ${kinds[i % kinds.length]}, at: 4 C, thick: 30 mm, watertight: true, eat: day ${1 + (i % 2)} dinner }\n`).join("")}`;
const frozen = `food:
  - { name: stew, amount: 2 kg, like: stew, state: frozen, at: -17 C, watertight: true, eat: day 2 dinner }
  - { name: burgers, amount: 2 kg, like: ground beef, raw: true, state: frozen, at: -17 C, watertight: true, eat: day 2 dinner }
  - { name: milk, amount: 1 kg, like: milk, state: frozen, at: -17 C, watertight: true, eat: day 2 breakfast }
`;
const chicken =
  "food:\n  - { name: chicken, amount: 2 kg, like: chicken thigh, raw: true, watertight: true, eat: day 4 dinner }\n";

interface Case {
  what: string;
  text: string;
  /** As the contract has it; both where it is not for the contract to say. */
  status: readonly number[];
  says: readonly RegExp[];
  /** In the trip book. */
  book: RegExp;
}

const cases: readonly Case[] = [
  {
    what: "400 items",
    text: head() + coolers(2, "70 L") + items(400) + shop + freezer,
    status: [0, 1],
    says: [/item 399/, /Ice to get before you go/],
    book: /item 399/,
  },
  {
    what: "no food",
    text: `${head() + coolers()}food: []\n${shop}${freezer}`,
    status: [0],
    says: [/No ice to get/, /Nothing perishable is aboard/, /can stay at home/],
    book: /Odd trip/,
  },
  {
    what: "everything frozen",
    text: head() + coolers() + frozen + shop + freezer,
    status: [0],
    says: [/stew \(frozen\)/, /milk would be\s+(still\s+)?frozen at its meal/],
    book: /burgers/,
  },
  {
    what: "100 kg of stew for a cooler of 10 L",
    text: head() + coolers(1, "10 L") + stew.replace("2 kg", "100 kg") + shop + freezer,
    status: [1],
    says: [/the lid does not close/, /more\s+than\s+there\s+is\s+room\s+for/, /leave stew out/],
    book: /stew/,
  },
  {
    what: "no freezer",
    text: head("2027-06-22T15:00") + coolers() + chicken + shop,
    status: [0, 1],
    says: [/the file names no freezer/],
    book: /chicken/,
  },
  {
    what: "no supply",
    text: head() + coolers() + stew + freezer,
    status: [0],
    says: [/no ice and no supply is listed/, /bags\s+of\s+cubes\s+from\s+a\s+shop\s+are\s+assumed/],
    book: /stew/,
  },
  {
    what: "dry ice alone for sale",
    text: `${head() + coolers() + stew}supply:\n  - { form: dry ice, each: 5 kg, where: gas shop }\n${freezer}`,
    status: [0],
    says: [/the supply lists dry ice only/, /Dry ice is not planned/, /suffocates/],
    book: /stew/,
  },
  {
    what: "ice from a later ice run alone",
    text: `${head() + coolers() + stew}supply:\n  - { form: cube, each: 4 kg, at: -2 C, where: jetty, when: day 2 11:00 }\n${freezer}`,
    status: [0],
    says: [/the supply lists ice on the way only/],
    book: /stew/,
  },
  {
    what: "a trip of one hour",
    text: `${head("2027-06-18T08:00") + coolers() + stew.replace("day 2 dinner", "throughout") + shop}`,
    status: [0],
    says: [/, 1 h;/, /under 4\.4 °C/],
    book: /stew/,
  },
  {
    what: "twelve coolers for one would do",
    text: head() + coolers(12, "30 L") + items(24) + shop + freezer,
    status: [0],
    says: [/box 12: nothing goes into it by this plan. It can stay at home/],
    book: /box 1\b/,
  },
];

/** Far more than any of them takes on a slow machine: a run that hangs is ended, and its status is no number. */
const limit_ms = 240_000;

interface Ran {
  status: number | null;
  out: string;
  err: string;
}

function ran(args: readonly string[], cwd: string): Promise<Ran> {
  return new Promise((done) => {
    const options = { cwd, encoding: "utf8", maxBuffer: 50_000_000, timeout: limit_ms } as const;
    const env = { ...process.env, COLDSTOW_WORKERS: "1" };
    const child = execFile(process.execPath, [program, ...args], { ...options, env }, (_, out, err) =>
      done({ status: child.exitCode, out, err }),
    );
  });
}

/** What a page shows, without its style. */
const visible = (html: string): string =>
  html
    .replace(/<(style|script)[\s\S]*?<\/\1>/g, " ")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");

const broken = /NaN|undefined|Infinity|\[object|\bnull\b/;

describe("a plan of", () => {
  it.concurrent.each(cases)(
    "$what",
    async ({ text, status, says, book }) => {
      const folder = folderWith({ "trip.yaml": text });
      const done = await ran(["plan", "trip.yaml", "--quiet", "--members", "16", "--out", "out"], folder);
      expect(done.err).toBe("");
      expect(status).toContain(done.status);
      for (const words of says) expect(done.out).toMatch(words);
      expect(done.out).not.toMatch(broken);
      const page = readFileSync(join(folder, "out/book.html"), "utf8");
      expect(page).toMatch(/^<!doctype html>/i);
      expect(visible(page)).toMatch(book);
      expect(visible(page)).not.toMatch(broken);
      expect((await ran(["check", "out/trip.planned.yaml"], folder)).status).toBe(0);
    },
    limit_ms + 20_000,
  );

  it.concurrent("coolers without a size are refused as the person's mistake, every one", async () => {
    const folder = folderWith({ "trip.yaml": head() + coolers(13, "0 L") + stew + shop });
    const done = await ran(["plan", "trip.yaml", "--quiet", "--members", "16", "--out", "out"], folder);
    expect(done).toMatchObject({ status: 2, out: "" });
    expect(done.err).toContain("coolers[12].size");
    expect(done.err).not.toMatch(/\n\s+at /);
  });
});
