import { nameDistance, nameWords } from "../matter/nearestName.ts";

/** Words less alike than this share are not worth offering. */
const farthest = 0.4;

/** The known word that a misspelt one most likely means, or null when none is near. */
export function nearest(word: string, known: readonly string[]): string | null {
  const words = nameWords(word.slice(0, 60));
  if (words.length === 0) return null;
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const distance = nameDistance(words, nameWords(candidate));
    if (distance <= farthest && distance < least) [best, least] = [candidate, distance];
  }
  return best;
}
