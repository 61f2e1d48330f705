import { DomainError, requireFinite } from "../quantity/errors.ts";
import type { Act, CoolerInput, FleetInput, Lot } from "./types.ts";

const longest_s = 400 * 86_400;

function checkLot(lot: Lot): void {
  const name = (what: string): string => `${lot.id} ${what}`;
  requireFinite(name("mass_kg"), lot.mass_kg, Number.MIN_VALUE, 1e5);
  requireFinite(name("pieces"), lot.pieces, 1, 1e5);
  requireFinite(name("start_C"), lot.start_C, -80, 100);
  if (lot.kind === "ice") requireFinite(name("liquid_frac"), lot.liquid_frac, 0, 1);
  else {
    requireFinite(name("thick_m"), lot.thick_m, 1e-4, 1);
    requireFinite(name("depth"), lot.depth, -1e9, 1e9);
  }
}

function checkCooler({ name, body, openings, lots }: CoolerInput): void {
  for (const [what, size_m] of Object.entries(body.inside)) requireFinite(`${name} ${what}`, size_m, 0.02, 5);
  requireFinite(`${name} emptyWeight_kg`, body.emptyWeight_kg, 0, 1000);
  requireFinite(`${name} absorptance_frac`, body.absorptance_frac, 0, 1);
  for (const [from_s, to_s] of openings?.spans_s ?? [])
    if (!(to_s > from_s))
      throw new DomainError(`${name} spans_s must end after they begin, got ${from_s}…${to_s}`);
  if (openings !== null) {
    requireFinite(`${name} openings perDay`, openings.perDay, 0, 1e5);
    requireFinite(`${name} openings each_s`, openings.each_s, 0, 86_400);
  }
  for (const lot of lots) checkLot(lot);
}

function checkAct(act: Act, coolers: number, lots: ReadonlySet<string>): void {
  requireFinite(`${act.do} t_s`, act.t_s, 0, longest_s);
  const there = (index: number): void => {
    requireFinite(`${act.do} cooler`, index, 0, coolers - 1);
  };
  if (act.do === "merge") {
    there(act.from);
    there(act.into);
    if (act.from === act.into)
      throw new DomainError(`merge into must be another cooler than from, got ${act.into}`);
    return;
  }
  if (act.do === "take out") {
    requireFinite("take out share_frac", act.share_frac, 0, 1);
    if (!lots.has(act.lot)) throw new DomainError(`take out lot must be aboard, got ${act.lot}`);
    return;
  }
  there(act.cooler);
  if (act.do === "open") requireFinite("open for_s", act.for_s, 0, 86_400);
  if (act.do === "put in") checkLot(act.lot);
}

/**
 * Refuses numbers that no fleet can have, before anything is reckoned with them. A caller's mistakes: what a person
 * types is checked by the trip room.
 *
 * @throws DomainError naming the first of them
 */
export function checkInput(input: FleetInput): void {
  requireFinite("end_s", input.end_s, 0, longest_s);
  const ids = [
    ...input.coolers.flatMap((cooler) => cooler.lots.map((lot) => lot.id)),
    ...input.acts.flatMap((act) => (act.do === "put in" ? [act.lot.id] : [])),
  ];
  const lots = new Set(ids);
  if (lots.size < ids.length)
    throw new DomainError(`lot ids must be unique, got ${ids.find((id, i) => ids.indexOf(id) < i)}`);
  input.coolers.forEach(checkCooler);
  for (const act of input.acts) checkAct(act, input.coolers.length, lots);
}
