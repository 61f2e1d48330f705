/** Parcels, links and codes without a page: what goes in comes out, in whatever order, and nothing else does. */
import { deflateRawSync, deflateSync } from "node:zlib";
import fc from "fast-check";
import { encodeQR } from "qr";
import { decodeQR } from "qr/decode.js";
import { describe, expect, it } from "vitest";
import { fromBase45, toBase45 } from "../../../app/share/base45.ts";
import { CodeGatherer, codesOf, MOST_CODES } from "../../../app/share/codes.ts";
import { differences } from "../../../app/share/differences.ts";
import { bytesOfLink, isHereOnly, linkTo } from "../../../app/share/link.ts";
import { type Parcel, packed, unpacked } from "../../../app/share/parcel.ts";
import { FileRefused } from "../../../app/share/refused.ts";

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);
const parcel = (text: string): Parcel => ({ kind: "trip", id: "a-1", changed_ms: 5, text });
const bytes = fc.uint8Array({ maxLength: 2000 }).map((one) => new Uint8Array(one));

describe("base 45", () => {
  it("writes the examples of RFC 9285 and reads them back", () => {
    const examples = [
      ["AB", "BB8"],
      ["Hello!!", "%69 VD92EX0"],
      ["base-45", "UJCLQE7W581"],
      ["ietf!", "QED8WEX0"],
    ] as const;
    for (const [plain, text] of examples) {
      expect(toBase45(ascii(plain))).toBe(text);
      expect(new TextDecoder().decode(fromBase45(text)!)).toBe(plain);
    }
  });

  it("refuses what no bytes make", () => {
    // 65 536 and 256 are one more than two bytes and one byte hold; the others have a wrong length or letter.
    for (const text of ["GGW", "V5", "A", "AAAA", "a0", "0é0"]) expect(fromBase45(text), text).toBeNull();
  });

  it("gives any bytes back", () => {
    fc.assert(
      fc.property(bytes, (one) => {
        expect(fromBase45(toBase45(one))).toEqual(one);
      }),
    );
  });
});

describe("a link", () => {
  it("gives any bytes back, and puts them after the # that no server sees", () => {
    fc.assert(
      fc.property(bytes, (one) => {
        fc.pre(one.length > 0);
        const link = linkTo(one, "https://example.org/app/#/decide");
        expect(new URL(link).pathname + new URL(link).search).toBe("/app/");
        expect(bytesOfLink(link)).toEqual(one);
      }),
    );
  });

  it("is refused where it is cut, has other letters, or is far too long", () => {
    for (const letters of ["", "AAAAA", "A A", "A%41", "ä"])
      expect(() => bytesOfLink(`#/sent/${letters}`), letters).toThrow(FileRefused);
    expect(() => bytesOfLink("A".repeat(600_000))).toThrow(/longer/);
  });

  it("says when it would open on this machine alone", () => {
    expect(["localhost", "127.0.0.1", "[::1]"].every(isHereOnly)).toBe(true);
    expect(["example.org", "192.168.1.5", "localhost.example.org"].some(isHereOnly)).toBe(false);
  });
});

describe("a parcel", () => {
  it("gives any text back, and packs it smaller than it is where it repeats itself", async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: "grapheme", maxLength: 500 }), async (text) => {
        expect(await unpacked(await packed(parcel(text)), "it")).toEqual(parcel(text));
      }),
      { numRuns: 30 },
    );
    expect((await packed(parcel("- { name: milk }\n".repeat(200)))).length).toBeLessThan(200);
  });

  const refusal = (one: Uint8Array): Promise<string> =>
    unpacked(new Uint8Array(one), "It").then(
      () => "taken",
      (error: unknown) => (error instanceof FileRefused ? error.message : `fault: ${String(error)}`),
    );

  it("is refused in a sentence where it is damaged, cut, from elsewhere or of another version", async () => {
    const good = await packed(parcel("coldstow: 1\n".repeat(50)));
    expect(await refusal(good.slice(0, -1))).toMatch(/cut short/);
    const flipped = good.slice();
    flipped[20]! ^= 1;
    expect(await refusal(flipped)).toMatch(/^It (is damaged|holds no trip)/);
    expect(await refusal(ascii("no parcel at all"))).toMatch(/damaged/);
    expect(await refusal(deflateSync("some text"))).toMatch(/no trip/);
    expect(await refusal(deflateSync(Buffer.from([0x7b, 0xff, 0xfe, 0x0a])))).toMatch(/damaged/);
    expect(await refusal(deflateRawSync("{}\n"))).toMatch(/damaged/);
    const head = (rest: object): Uint8Array =>
      deflateSync(
        `${JSON.stringify({ "coldstow-parcel": 1, kind: "trip", id: "a", changed_ms: 1, ...rest })}\n`,
      );
    expect(await refusal(head({}))).toBe("taken");
    expect(await refusal(head({ "coldstow-parcel": 7 }))).toMatch(/version 7.*knows version 1/);
    for (const rest of [{ kind: "script" }, { id: "../x" }, { id: 5 }, { changed_ms: "now" }])
      expect(await refusal(head(rest)), JSON.stringify(rest)).toMatch(/damaged/);
  });

  it("that would unpack to 60 MB is given up before it does", async () => {
    const bomb = deflateSync(Buffer.alloc(60_000_000, "a"));
    expect(bomb.length).toBeLessThan(100_000);
    expect(await refusal(bomb)).toMatch(/more than the 2 MB/);
  });
});

describe("codes", () => {
  it("make the parcel again in any order, however often each is read", () => {
    fc.assert(
      fc.property(
        fc.uint8Array({ minLength: 4, maxLength: 6000 }).map((one) => new Uint8Array(one)),
        fc.infiniteStream(fc.nat()),
        (one, chance) => {
          const codes = codesOf(one)!;
          const twice = [...codes, ...codes].sort(() => ((chance.next().value as number) % 3) - 1);
          const gatherer = new CodeGatherer();
          const states = twice.map((code) => gatherer.add(code)!);
          expect(states.at(-1)!.missing).toEqual([]);
          expect(states.at(-1)!.whole).toEqual(one);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("tell which are missing, and keep those of two parcels apart", () => {
    const [one, two] = [1, 2].map((seed) => Uint8Array.from({ length: 1500 }, (_, i) => (i * seed) % 251));
    const [ones, twos] = [codesOf(one!)!, codesOf(two!)!];
    expect(ones.length).toBe(4);
    const gatherer = new CodeGatherer();
    gatherer.add(ones[2]!);
    gatherer.add(twos[0]!);
    expect(gatherer.add(ones[2]!)).toEqual({ missing: [1, 2, 4], of: 4, whole: null });
    for (const i of [0, 1]) gatherer.add(ones[i]!);
    expect(gatherer.add(ones[3]!)!.whole).toEqual(one);
    expect(gatherer.add(twos[1]!)!.missing).toEqual([3, 4]);
  });

  it("of others are none of ours, whatever they say", () => {
    const gatherer = new CodeGatherer();
    for (const text of [
      "",
      "https://example.org",
      "COLDSTOW1:00000000:0/1:AAA:",
      "COLDSTOW1:00000000:3/2:AAA:",
    ])
      expect(gatherer.add(text), text).toBeNull();
    expect(gatherer.add("COLDSTOW1:00000000:1/99:AAA:")).toBeNull();
    fc.assert(fc.property(fc.string(), (text) => void gatherer.add(`COLDSTOW1:0000000A:1/2:${text}`)));
  });

  it("are not made of what would take too many", () => {
    expect(codesOf(new Uint8Array(460 * MOST_CODES))).toHaveLength(MOST_CODES);
    expect(codesOf(new Uint8Array(460 * MOST_CODES + 1))).toBeNull();
  });

  it("are QR codes that a reader gives back letter by letter, blanks at the end too", () => {
    const text = codesOf(Uint8Array.from({ length: 460 }, (_, i) => (i * 7919) % 256))![0]!;
    const cells = encodeQR(text, "raw", { ecc: "low", border: 4 });
    expect(cells.length).toBeLessThanOrEqual(93);
    const side = cells.length * 4;
    const data = new Uint8ClampedArray(side * side * 4).fill(255);
    for (let y = 0; y < side; y++)
      for (let x = 0; x < side; x++)
        if (cells[y >> 2]![x >> 2]) data.fill(0, 4 * (y * side + x), 4 * (y * side + x) + 3);
    expect(decodeQR({ width: side, height: side, data })).toBe(text);
  });
});

describe("differences", () => {
  it("are told by place, also where one of the two has nothing", () => {
    const own = { title: "A", food: [{ name: "milk" }, { name: "eggs" }], party: { adults: 2 } };
    const theirs = { title: "B", food: [{ name: "milk" }], ice: [], party: { adults: 2, children: 1 } };
    expect(differences(own, theirs)).toEqual([
      { path: "title", own: "A", theirs: "B" },
      { path: "food[1]", own: { name: "eggs" }, theirs: undefined },
      { path: "party.children", own: undefined, theirs: 1 },
      { path: "ice", own: undefined, theirs: [] },
    ]);
    expect(differences(own, structuredClone(own))).toEqual([]);
  });
});
