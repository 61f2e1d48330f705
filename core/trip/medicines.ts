import type { Notes } from "./notes.ts";

/** Words for what must not be kept by this reckoning. Whole words, so that no food is taken for one. */
const medicine =
  /\b(insulins?|vaccines?|medicines?|medications?|medicaments?|antibiotics?|epinephrine|adrenaline|glucagon|suppositor(?:y|ies)|(?:eye|ear)[ -]?drops?|prescriptions?|breast ?milk|blood)\b/i;
/** Foods that are named with one of these words. */
const foodAfterAll = /\bblood (oranges?|sausages?|puddings?)\b/gi;

/**
 * Refuses a medicine under `food`, with a referral. Rules on food say nothing of what it bears: some of it is spoiled by
 * one hour below 0 °C, and nothing shows.
 */
export function refuseMedicine(
  notes: Notes,
  file: { name: string; like?: string | undefined },
  path: string,
): boolean {
  const isMedicine = (typed = ""): boolean => medicine.test(typed.replace(foodAfterAll, ""));
  const key = isMedicine(file.name) ? "name" : isMedicine(file.like) ? "like" : null;
  if (key === null) return false;
  const must =
    "food or drink: medicines and breast milk are not reckoned here; ask the pharmacist how to carry it, and read its label";
  notes.refuse(`${path}.${key}`, must, file[key]);
  return true;
}
