import { DomainError } from "../quantity/errors.ts";

/** Coefficients of a ratio of two polynomials, lowest power first, to the digits that a number here can hold. */
interface Ratio {
  top: readonly number[];
  bottom: readonly number[];
}

/** |p − 0.5| ≤ 0.425, in 0.425² − (p − 0.5)². */
const middle: Ratio = {
  top: [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
    67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  bottom: [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
};

/** Tails with √(−ln p) ≤ 5, in what it has over 1.6. */
const near: Ratio = {
  top: [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  bottom: [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
};

/** Tails further out, in what √(−ln p) has over 5. */
const far: Ratio = {
  top: [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
  ],
  bottom: [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
};

/**
 * The standard normal deviate below which a share `p_frac` of all lie. Relative error about 1e-16 over the whole range,
 * says the publication.
 *
 * @throws DomainError unless 0 < p_frac < 1
 * @source wichura-1988
 */
export function normalQuantile(p_frac: number): number {
  if (!(p_frac > 0 && p_frac < 1)) throw new DomainError(`p_frac must be inside 0…1, got ${p_frac}`);
  const off = p_frac - 0.5;
  if (Math.abs(off) <= 0.425) return off * ratio(middle, 0.425 ** 2 - off * off);
  const depth = Math.sqrt(-Math.log(off < 0 ? p_frac : 1 - p_frac));
  const size = depth <= 5 ? ratio(near, depth - 1.6) : ratio(far, depth - 5);
  return off < 0 ? -size : size;
}

function ratio({ top, bottom }: Ratio, x: number): number {
  return polynomial(top, x) / polynomial(bottom, x);
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}
