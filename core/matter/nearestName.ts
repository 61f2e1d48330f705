/**
 * Words of a name in lower case, accents and punctuation gone, plurals made singular.
 *
 * @source engineering-judgement
 */
export function nameWords(name: string): string[] {
  return name
    .normalize("NFKD")
    .replace(/[\u0300-\u036f'’]/g, "")
    .toLowerCase()
    .split(/[^a-z0-9%]+/)
    .filter((word) => word !== "")
    .map(singular);
}

function singular(word: string): string {
  if (word.length <= 3 || /(ss|us|is)$/.test(word)) return word;
  if (word.endsWith("ies") && word.length > 4) return `${word.slice(0, -3)}y`;
  if (/(ch|sh|x|o)es$/.test(word)) return word.slice(0, -2);
  return word.endsWith("s") ? word.slice(0, -1) : word;
}

/** Longer names than this are compared by their beginning. */
const COMPARED = 60;

/**
 * How unlike two names are: 0 for the same, about 1 for nothing in common. Shared spelling counts, shared words more.
 *
 * @source engineering-judgement
 */
export function nameDistance(a: readonly string[], b: readonly string[]): number {
  const shared = a.filter((word) => b.includes(word)).length;
  const overlap = shared / Math.max(a.length, b.length, 1);
  const [x, y] = [a.join(" ").slice(0, COMPARED), b.join(" ").slice(0, COMPARED)];
  const spelling = edits(x, y) / Math.max(x.length, y.length, 1);
  return spelling * (1 - overlap / 2);
}

/** Levenshtein's distance. */
function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}
