import sources from "../../core/sources.json?url";

interface Work {
  cite: string;
  where?: string;
  read: string;
}

let works: Promise<Readonly<Record<string, Work>>> | null = null;

async function load(): Promise<Readonly<Record<string, Work>>> {
  const answer = await fetch(sources);
  if (!answer.ok) throw new Error(`status ${answer.status}`);
  return answer.json();
}

/** What stands behind the keys of sources: the key, the work, where in it, and how it was read. Fetched when first asked for. */
export async function citations(keys: readonly string[]): Promise<string[]> {
  works ??= load();
  works.catch(() => {
    works = null;
  });
  const known = await works;
  return keys.map((key) => {
    const work = known[key];
    if (work === undefined) return key;
    const where = work.where === undefined ? "" : `; ${work.where}`;
    const read = work.read === "not applicable" ? "" : ` (${work.read})`;
    return `${key}: ${work.cite}${where}${read}`;
  });
}
