// joe-kuo-2008: Joe, S., Kuo, F. Y. (2008), Constructing Sobol sequences with better two-dimensional projections, SIAM J. Sci.
// Comput. 30:2635–2654, as quoted elsewhere: rows "d s a m_i" of the table, 2: 1 0 1; 3: 2 1 1 3; 4: 3 1 1 3 1.
// The expected points were printed by SciPy 1.17 (scipy.stats.qmc.Sobol, unscrambled), which uses that table.
import { describe, expect, it } from "vitest";
import { sobol_frac } from "../../core/ensemble/sobol.ts";

const count = 64;

/** The first 64 plain points, in 1/64, by dimension. */
const printed = [
  [
    0, 32, 48, 16, 24, 56, 40, 8, 12, 44, 60, 28, 20, 52, 36, 4, 6, 38, 54, 22, 30, 62, 46, 14, 10, 42, 58,
    26, 18, 50, 34, 2, 3, 35, 51, 19, 27, 59, 43, 11, 15, 47, 63, 31, 23, 55, 39, 7, 5, 37, 53, 21, 29, 61,
    45, 13, 9, 41, 57, 25, 17, 49, 33, 1,
  ],
  [
    0, 32, 16, 48, 24, 56, 8, 40, 20, 52, 4, 36, 12, 44, 28, 60, 30, 62, 14, 46, 6, 38, 22, 54, 10, 42, 26,
    58, 18, 50, 2, 34, 17, 49, 1, 33, 9, 41, 25, 57, 5, 37, 21, 53, 29, 61, 13, 45, 15, 47, 31, 63, 23, 55, 7,
    39, 27, 59, 11, 43, 3, 35, 19, 51,
  ],
  [
    0, 32, 16, 48, 40, 8, 56, 24, 60, 28, 44, 12, 20, 52, 4, 36, 30, 62, 14, 46, 54, 22, 38, 6, 34, 2, 50, 18,
    10, 42, 26, 58, 45, 13, 61, 29, 5, 37, 21, 53, 17, 49, 1, 33, 57, 25, 41, 9, 51, 19, 35, 3, 27, 59, 11,
    43, 15, 47, 31, 63, 39, 7, 55, 23,
  ],
  [
    0, 32, 16, 48, 56, 24, 40, 8, 28, 60, 12, 44, 36, 4, 52, 20, 42, 10, 58, 26, 18, 50, 2, 34, 54, 22, 38, 6,
    14, 46, 30, 62, 35, 3, 51, 19, 27, 59, 11, 43, 63, 31, 47, 15, 7, 39, 23, 55, 9, 41, 25, 57, 49, 17, 33,
    1, 21, 53, 5, 37, 45, 13, 61, 29,
  ],
];

/** How many of their first six bits two numbers share, from the top. */
const shared = (a: number, b: number): number => Math.clz32(a ^ b) - 26;

/**
 * For every two of the points, how many leading bits they share in each dimension, sorted. Neither the order of the points nor a
 * scramble that moves halves within halves changes that, nor which aligned block of the sequence they are.
 */
function kinship(columns: readonly (readonly number[])[]): string[] {
  const pairs: string[] = [];
  for (let i = 0; i < count; i++)
    for (let j = 0; j < i; j++) pairs.push(columns.map((x) => shared(x[i]!, x[j]!)).join(""));
  return pairs.sort();
}

const drawn = (dimensions: readonly number[], seed: number): number[][] =>
  dimensions.map((d) =>
    Array.from({ length: count }, (_, member) => Math.floor(count * sobol_frac(member, d, seed))),
  );

describe("the four dimensions of a group", () => {
  it.each([0, 1, 2, 77, 4294967295])("are the printed points, scrambled, seed %i", (seed) => {
    for (const first of [0, 4, 60])
      expect(kinship(drawn([first, first + 1, first + 2, first + 3], seed))).toEqual(kinship(printed));
  });

  it("and the check tells the dimensions apart", () => {
    expect(kinship(drawn([0, 2, 1, 3], 0))).not.toEqual(kinship(printed));
    expect(kinship(drawn([0, 1, 3, 2], 0))).not.toEqual(kinship(printed));
    expect(kinship(drawn([0, 1, 2, 7], 0))).not.toEqual(kinship(printed));
  });
});
