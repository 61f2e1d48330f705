/** A number that is not known exactly: a median with the ends of its 10–90 % range. */
export interface Spread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}
