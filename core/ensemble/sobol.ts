import { DomainError } from "../quantity/errors.ts";

/** Dimensions that come from one Sobol sequence; further ones are further shuffles of the same four. */
const groupSize = 4;

/**
 * Primitive polynomials over GF(2), degree and inner coefficients as a binary number, and the odd numbers that start each
 * recurrence: dimensions 2 to 4 of the published table. Dimension 1 is the bit-reversed count.
 */
const started = [
  { degree: 1, inner: 0, odd: [1] },
  { degree: 2, inner: 1, odd: [1, 3] },
  { degree: 3, inner: 1, odd: [1, 3, 1] },
];

/** 32 direction numbers of each dimension, the first at the top bit. */
const directions: readonly Uint32Array[] = [
  Uint32Array.from({ length: 32 }, (_, k) => 1 << (31 - k)),
  ...started.map(directionsFrom),
];

function directionsFrom({ degree, inner, odd }: (typeof started)[number]): Uint32Array {
  const v = new Uint32Array(32);
  for (let k = 0; k < 32; k++) {
    if (k < degree) {
      v[k] = odd[k]! << (31 - k);
      continue;
    }
    let next = v[k - degree]! ^ (v[k - degree]! >>> degree);
    for (let j = 1; j < degree; j++) if ((inner >>> (degree - 1 - j)) & 1) next ^= v[k - j]!;
    v[k] = next;
  }
  return v;
}

/**
 * Coordinate of one member in one dimension of a scrambled Sobol sequence, inside 0…1 and never on an end.
 *
 * It depends on nothing but its three arguments: a member is the same however many there are, alone or in a batch. The
 * first 2^k members have one point in each of 2^k equal parts of every dimension. Dimensions 4g to 4g + 3 are one Sobol
 * sequence; groups have the same points in orders that are independent of each other, so there is no end to dimensions. All is
 * done on 32-bit whole numbers, so that every engine gives the same bits.
 *
 * It is not a random number: members of one seed repel each other. Spread between seeds is what tells the error.
 *
 * @param member 0…2³² − 1
 * @param dimension 0, 1, 2, …
 * @param seed 0…2³² − 1
 * @throws DomainError when an argument is no whole number in its range
 * @source joe-kuo-2008, burley-2020
 */
export function sobol_frac(member: number, dimension: number, seed: number): number {
  requireCount("member", member);
  requireCount("dimension", dimension);
  requireCount("seed", seed);
  const group = Math.floor(dimension / groupSize);
  const index = scrambled(member, mixed(mixed(seed ^ 0x5bf03635) ^ group));
  const point = coordinate(index, directions[dimension % groupSize]!);
  const x = scrambled(point, mixed(mixed(seed ^ 0x1f83d9ab) ^ dimension));
  return (x + 0.5) / 2 ** 32;
}

function requireCount(name: string, value: number): void {
  if (Number.isInteger(value) && value >= 0 && value < 2 ** 32) return;
  throw new DomainError(`${name} must be a whole number 0…4294967295, got ${value}`);
}

function coordinate(index: number, v: Uint32Array): number {
  let x = 0;
  for (let k = 0; k < 32; k++) if ((index >>> k) & 1) x ^= v[k]!;
  return x >>> 0;
}

/**
 * Nested scramble in base 2: each bit is flipped or not by a hash of the bits above it. On an index it is a shuffle that keeps
 * every aligned block of 2^k together.
 */
function scrambled(x: number, seed: number): number {
  // Carries of sums and even products only travel upward, so on reversed bits they travel from the top down.
  let y = reversed(x);
  y = (y + seed) | 0;
  y ^= Math.imul(y, 0x6c50b47c);
  y ^= Math.imul(y, 0xb82f1e52);
  y ^= Math.imul(y, 0xc7afe638);
  y ^= Math.imul(y, 0x8d22f6e6);
  return reversed(y);
}

function reversed(x: number): number {
  let y = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1);
  y = ((y >>> 2) & 0x33333333) | ((y & 0x33333333) << 2);
  y = ((y >>> 4) & 0x0f0f0f0f) | ((y & 0x0f0f0f0f) << 4);
  y = ((y >>> 8) & 0x00ff00ff) | ((y & 0x00ff00ff) << 8);
  return ((y >>> 16) | (y << 16)) >>> 0;
}

/** A bijection of 32-bit numbers that leaves no bit alone. */
function mixed(x: number): number {
  let y = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  y = Math.imul(y ^ (y >>> 13), 0xc2b2ae35);
  return (y ^ (y >>> 16)) >>> 0;
}
