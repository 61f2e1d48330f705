import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Aim, type Choice, leastPieces, type Outcome } from "../../../core/plan/leastPieces.ts";

/** A toy box: pieces of kind i are worth so much life each and take so much room. */
interface Toy {
  choices: Choice[];
  life: number[];
  room: number[];
  need: number;
  space: number;
}

const sum = (counts: readonly number[], each: readonly number[]): number =>
  counts.reduce((total, count, i) => total + count * each[i]!, 0);
const answer =
  (toy: Toy) =>
  (counts: readonly number[]): Outcome =>
    sum(counts, toy.room) > toy.space ? "over" : sum(counts, toy.life) >= toy.need ? "holds" : "short";

const toy: fc.Arbitrary<Toy> = fc.integer({ min: 1, max: 3 }).chain((kinds) => {
  const each = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T[]> =>
    fc.array(value, { minLength: kinds, maxLength: kinds });
  return fc.record({
    choices: each(
      fc.record({
        each_kg: fc.integer({ min: 1, max: 9 }),
        price: fc.option(fc.integer({ min: 0, max: 9 })),
        max: fc.integer({ min: 0, max: 12 }),
      }),
    ),
    life: each(fc.integer({ min: 1, max: 20 })),
    room: each(fc.integer({ min: 1, max: 10 })),
    need: fc.integer({ min: 0, max: 120 }),
    space: fc.integer({ min: 5, max: 60 }),
  });
});

/** Every mix of at most two kinds that holds. */
function allThatHold(box: Toy): number[][] {
  let mixes: number[][] = [[]];
  for (const { max } of box.choices)
    mixes = mixes.flatMap((mix) => Array.from({ length: max + 1 }, (_, n) => [...mix, n]));
  return mixes.filter((mix) => mix.filter((n) => n > 0).length <= 2 && answer(box)(mix) === "holds");
}

function worth(box: Toy, aim: Aim, counts: readonly number[]): number {
  if (aim === "pieces") return counts.reduce((a, b) => a + b, 0);
  if (aim === "weight")
    return sum(
      counts,
      box.choices.map((choice) => choice.each_kg),
    );
  return sum(
    counts,
    box.choices.map((choice) => choice.price ?? 10_000),
  );
}

describe("the least pieces", () => {
  it("are as few, as light or as cheap as any mix of two kinds can be, by brute force", () => {
    fc.assert(
      fc.property(toy, fc.constantFrom<Aim>("pieces", "weight", "cost"), (box, aim) => {
        const found = leastPieces(box.choices, aim, answer(box), { budget: 10_000 });
        const held = allThatHold(box);
        expect(found === null).toBe(held.length === 0);
        if (found === null) return;
        const least = Math.min(...held.map((mix) => worth(box, aim, mix)));
        expect(worth(box, aim, found)).toBe(least);
      }),
      { numRuns: 400 },
    );
  });

  it("break when any one piece is left out", () => {
    fc.assert(
      fc.property(toy, (box) => {
        const found = leastPieces(box.choices, "cost", answer(box));
        for (const [kind, count] of (found ?? []).entries()) {
          if (count === 0) continue;
          const fewer = found!.map((n, i) => (i === kind ? n - 1 : n));
          expect(answer(box)(fewer)).not.toBe("holds");
        }
      }),
    );
  });

  it("break when any one piece is left out even where a piece more for once did harm", () => {
    const odd = (counts: readonly number[]): Outcome =>
      counts[0]! >= 3 && counts[0] !== 11 ? "holds" : "short";
    const found = leastPieces([{ each_kg: 1, price: null, max: 20 }], "pieces", odd)!;
    expect(odd(found)).toBe("holds");
    expect(odd([found[0]! - 1])).toBe("short");
  });

  it("are asked about few times: two kinds of up to 30 pieces take under 80 questions", () => {
    let asked = 0;
    const ask = (counts: readonly number[]): Outcome => {
      asked++;
      return counts[0]! * 2 + counts[1]! * 3 >= 61 ? "holds" : "short";
    };
    const kinds = [
      { each_kg: 2, price: 1, max: 30 },
      { each_kg: 3, price: 1, max: 30 },
    ];
    expect(leastPieces(kinds, "weight", ask)).not.toBeNull();
    expect(asked).toBeLessThan(80);
  });

  it("mix two kinds where neither does alone", () => {
    const both = (counts: readonly number[]): Outcome =>
      counts[0]! >= 2 && counts[1]! >= 3 ? "holds" : "short";
    const kinds = [
      { each_kg: 5, price: null, max: 9 },
      { each_kg: 5, price: null, max: 9 },
    ];
    expect(leastPieces(kinds, "pieces", both)).toEqual([2, 3]);
  });

  it("are none where no ice is needed, and null where nothing is on offer", () => {
    expect(leastPieces([{ each_kg: 5, price: 1, max: 9 }], "pieces", () => "holds")).toEqual([0]);
    expect(leastPieces([], "pieces", () => "short")).toBeNull();
  });
});
