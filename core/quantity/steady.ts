const perUnit = 2 ** 26;

/**
 * A sine, a cosine or an angle in degrees without its last digits, in which engines differ. A time step that only just
 * passes in one of them would else be refused in another, and the same trip would get another answer. What is dropped,
 * 1e-8, is far below what is known of sun and air.
 */
export function steady(value: number): number {
  return Math.round(value * perUnit) / perUnit;
}
