import type { SeriesCounts } from "./types.ts";

/**
 * Counts of a series by moment and bin. What is at or below `from` has the first bin to itself, so that "none left" stays
 * exactly none; what is above the last bin is counted in it.
 */
export function makeCounts(nMoments: number, from: number, to: number, nBins: number): SeriesCounts {
  return { nBins, from, width: (to - from) / (nBins - 1), counts: new Uint32Array(nMoments * nBins) };
}

/** Counts one member's value at a moment; null is in no bin. */
export function count(into: SeriesCounts, moment: number, value: number | null): void {
  if (value === null) return;
  const { nBins, from, width, counts } = into;
  const bin = value <= from ? 0 : Math.min(nBins - 1, 1 + Math.floor((value - from) / width));
  counts[moment * nBins + bin]!++;
}

/**
 * The quantile of the values that there are at a moment, straight within a bin; null where no member has one. Off by no more
 * than a bin.
 */
export function countedQuantile(of: SeriesCounts, moment: number, p_frac: number): number | null {
  const { nBins, from, width, counts } = of;
  const at = moment * nBins;
  let total = 0;
  for (let bin = 0; bin < nBins; bin++) total += counts[at + bin]!;
  if (total === 0) return null;
  let below = 0;
  const wanted = p_frac * total;
  for (let bin = 0; bin < nBins; bin++) {
    const here = counts[at + bin]!;
    if (here > 0 && below + here >= wanted)
      return bin === 0 ? from : from + (bin - 1 + (wanted - below) / here) * width;
    below += here;
  }
  return from + (nBins - 1) * width;
}

/** Adds other counts of the same series. */
export function addCounts(into: SeriesCounts, other: SeriesCounts): void {
  for (let i = 0; i < into.counts.length; i++) into.counts[i]! += other.counts[i]!;
}
