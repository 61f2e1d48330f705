import { massWords, type UnitSystem } from "../../core/index.ts";
import type { PlanView } from "../worker/asks.ts";

const ice = ({ result }: PlanView, units: UnitSystem): string =>
  massWords(result.plan?.weight_kg ?? 0, units);

/** What a new plan changed, in one line to be read out: the ice, the price, and the answer where it is another one. */
export function newsOf(before: PlanView | null, now: PlanView, units: UnitSystem): string {
  if (before === null) return `The plan is there: ice ${ice(now, units)}. ${now.answer.food}`;
  const parts = [
    `ice ${ice(now, units)}${ice(before, units) === ice(now, units) ? " as before" : `, was ${ice(before, units)}`}`,
  ];
  const [was, is] = [before.result.plan?.cost ?? null, now.result.plan?.cost ?? null];
  if (is !== null && was !== is)
    parts.push(`cost ${is.toFixed(2)}${was === null ? "" : `, was ${was.toFixed(2)}`}`);
  const answer = before.answer.food === now.answer.food ? "The answer is the same." : now.answer.food;
  return `Plan is new: ${parts.join("; ")}. ${answer}`;
}
