import type { IceForm } from "../cooler/types.ts";

const NOUNS: Readonly<Record<IceForm, readonly [one: string, many: string]>> = {
  block: ["block", "blocks"],
  cube: ["bag of cubes", "bags of cubes"],
  crushed: ["bag of crushed ice", "bags of crushed ice"],
  jug: ["frozen jug", "frozen jugs"],
  "gel pack": ["gel pack", "gel packs"],
  "eutectic pack": ["eutectic pack", "eutectic packs"],
  "dry ice": ["piece of dry ice", "pieces of dry ice"],
};

/**
 * Ice as one buys or freezes it: "4 × 10-lb bags of cubes". A thing with a name keeps it: a 10-lb bag is never told
 * in kilograms.
 *
 * @param each as typed or as shown, "10 lb"
 */
export function pieceWords(pieces: number, each: string, form: string): string {
  const nouns = NOUNS[form as IceForm] ?? [form, form];
  const size = each
    .trim()
    .replace(/^(.*\b(?:lb|oz|kg|gal))s$/i, "$1")
    .replace(/\s+/g, "-");
  return `${pieces} × ${size} ${pieces === 1 ? nouns[0] : nouns[1]}`;
}
