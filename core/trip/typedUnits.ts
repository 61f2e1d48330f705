import type { UnitSystem } from "../quantity/units.ts";

const us = /\d[ \t]?°?(?:F|lbs?|oz|fl oz|qt|gal|in|ft|mph)\b(?![ \t]*:)/g;
const metric = /\d[ \t]?°?(?:C|kg|g|L|l|mL|ml|mm|cm|m|km|km\/h)\b(?![ \t]*:)/g;

/** The units that most of a trip file is typed in; metric where it is even. */
export function unitsOf(text: string): UnitSystem {
  const typed = text.replace(/#.*$/gm, "");
  const count = (pattern: RegExp): number => typed.match(pattern)?.length ?? 0;
  return count(us) > count(metric) ? "us" : "metric";
}
