/**
 * Black-body temperature of the open sky, mean over the hemisphere, °C: the air's less a depression that cloud takes
 * away in proportion to the sky it covers, since low cloud radiates at nearly the temperature of the air below it.
 * High thin cloud closes the sky less than that, and desert air leaves it colder: the range of the depression.
 *
 * @param clearSkyDepression_K 8…20, median 14
 * @source engineering-judgement
 */
export function skyTemperature_C(air_C: number, cloud_frac: number, clearSkyDepression_K: number): number {
  return air_C - clearSkyDepression_K * (1 - cloud_frac);
}

/**
 * Black-body temperature of two sights side by side, °C, the first filling `first_frac` of the view: the mean of their
 * fourth powers.
 *
 * @source derivation
 */
export function mixedRadiant_C(first_frac: number, first_C: number, second_C: number): number {
  const mean =
    first_frac * ((first_C + 273.15) ** 2) ** 2 + (1 - first_frac) * ((second_C + 273.15) ** 2) ** 2;
  return Math.sqrt(Math.sqrt(mean)) - 273.15;
}
