import { isMap, isSeq, parseDocument, type YAMLSeq } from "yaml";
import type { Spread } from "../matter/spread.ts";
import { formatIn } from "../quantity/show.ts";
import type { CoolerHistory, LearnedRecord } from "../trip/types.ts";

/** A conductance as one would type it, to three figures. */
function typed(value_W_per_K: number): string {
  const figures = Math.floor(Math.log10(value_W_per_K));
  return formatIn(value_W_per_K, "W/K", Math.min(6, Math.max(0, 2 - figures)));
}

const spreadEntry = ({ p10, p50, p90 }: Spread): Record<"low" | "likely" | "high", string> => ({
  low: typed(p10),
  likely: typed(p50),
  high: typed(p90),
});

const head = `# What trips taught of one cooler: its conductance, and what each trip says by itself (low and high: eight times in ten).
# Name this file under "history" at the cooler in a trip file. To forget a trip, delete its line.
`;

/** Which record is meant: one trip teaches once. */
type RecordName = Pick<LearnedRecord, "trip" | "ended">;

/**
 * The text of a history file with one record more, in place of an earlier one of the same trip. Comments and everything else
 * a person wrote stay.
 *
 * @param text the file so far, which `readHistory` accepts; null: there is none yet
 * @param before what was believed before the first record; only for a new file
 */
export function withRecord(
  text: string | null,
  cooler: string,
  before_W_per_K: Spread,
  record: LearnedRecord,
): string {
  const kept = text === null ? null : withoutRecord(text, record);
  const document =
    kept === null ? parseDocument("coldstow-history: 1\n") : parseDocument(kept, { uniqueKeys: false });
  const flow = (entry: object): unknown => {
    const node = document.createNode(entry);
    if (isMap(node)) node.flow = true;
    return node;
  };
  if (kept === null) {
    document.set("cooler", cooler);
    document.set("before", flow(spreadEntry(before_W_per_K)));
    document.set("learned", document.createNode([]));
  }
  const { trip, ended, from, conductance_W_per_K } = record;
  const when = ended === null ? {} : { ended };
  const learned = document.get("learned") as YAMLSeq;
  learned.flow = false;
  learned.add(flow({ trip, ...when, from, ...spreadEntry(conductance_W_per_K) }));
  const written = document.toString({ lineWidth: 0 });
  return kept === null ? head + written : written;
}

/** The text of a history file without the record of a trip; the same text where it holds none. */
export function withoutRecord(text: string, { trip, ended }: RecordName): string {
  const document = parseDocument(text, { uniqueKeys: false });
  const learned = document.get("learned");
  if (!isSeq(learned)) return text;
  const isOwn = (item: unknown): boolean =>
    isMap(item) && item.get("trip") === trip && (item.get("ended") ?? null) === ended;
  const rest = learned.items.filter((item) => !isOwn(item));
  if (rest.length === learned.items.length) return text;
  learned.items = rest;
  return document.toString({ lineWidth: 0 });
}

/** A trip file without what the histories written into it hold of one trip; the same text where they hold nothing of it. */
export function withoutOwnRecord(text: string, { trip, ended }: RecordName): string {
  const document = parseDocument(text, { uniqueKeys: false });
  const coolers = document.get("coolers");
  if (!isSeq(coolers)) return text;
  const isOwn = (item: unknown): boolean =>
    isMap(item) && item.get("trip") === trip && (item.get("ended") ?? null) === ended;
  let gone = 0;
  for (const cooler of coolers.items) {
    const history = isMap(cooler) ? cooler.get("history") : null;
    const learned = isMap(history) ? history.get("learned") : null;
    if (!isSeq(learned)) continue;
    const rest = learned.items.filter((item) => !isOwn(item));
    gone += learned.items.length - rest.length;
    learned.items = rest;
  }
  return gone === 0 ? text : document.toString({ lineWidth: 0 });
}

/** A history as the text of a file of its own; null where there is nothing in it. */
export function historyText({ cooler, before_W_per_K, records }: CoolerHistory): string | null {
  return records.reduce<string | null>(
    (text, record) => withRecord(text, cooler, before_W_per_K, record),
    null,
  );
}

/** What a trip file takes under `history` at a cooler: the records so far and one more, in place of an earlier one of its trip. */
export function inlineHistory(
  earlier: CoolerHistory | null,
  before_W_per_K: Spread,
  record: LearnedRecord,
): object {
  const others = (earlier?.records ?? []).filter(
    ({ trip, ended }) => trip !== record.trip || ended !== record.ended,
  );
  return {
    before: spreadEntry(earlier?.before_W_per_K ?? before_W_per_K),
    learned: [...others, record].map(({ trip, ended, from, conductance_W_per_K }) => ({
      trip,
      ...(ended === null ? {} : { ended }),
      from,
      ...spreadEntry(conductance_W_per_K),
    })),
  };
}
