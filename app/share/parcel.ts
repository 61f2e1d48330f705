import { FileRefused } from "./refused.ts";

/*
 * A parcel is what one device hands another without a file between them: a trip or a camp log, made small, in a link or
 * in codes. It is a line of JSON, then the file as it is, packed by zlib (RFC 1950), whose checksum tells damage.
 */

export interface Parcel {
  kind: "trip" | "log";
  /** Of the trip, the same on every device that took it over. */
  id: string;
  /** When the sender changed it last. */
  changed_ms: number;
  /** The trip file or the log file. */
  text: string;
}

const VERSION = 1;
/** A trip file has at most 2 MB; what unpacks to more was made to choke a page. */
const MOST_BYTES = 2_100_000;
const MOST_HEAD = 400;

const stream = (bytes: BlobPart, through: CompressionStream | DecompressionStream): ReadableStream =>
  new Blob([bytes]).stream().pipeThrough(through);

export async function packed({ text, ...head }: Parcel): Promise<Uint8Array<ArrayBuffer>> {
  const whole = `${JSON.stringify({ "coldstow-parcel": VERSION, ...head })}\n${text}`;
  const small = stream(whole, new CompressionStream("deflate"));
  return new Uint8Array(await new Response(small).arrayBuffer());
}

/** @throws FileRefused where it is no parcel, is damaged, or unpacks to more than any trip has */
export async function unpacked(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<Parcel> {
  const whole = await inflated(bytes, name);
  const end = whole.indexOf("\n");
  const head = end < 0 || end > MOST_HEAD ? null : headIn(whole.slice(0, end));
  if (head === null) throw new FileRefused(`${name} holds no trip. Nothing was changed.`);
  const { "coldstow-parcel": version, kind, id, changed_ms } = head;
  if (version !== VERSION)
    throw new FileRefused(
      `${name} is of version ${String(version).slice(0, 20)}; this app knows version ${VERSION}. Update it, then open it again. Nothing was changed.`,
    );
  const isGood =
    (kind === "trip" || kind === "log") && typeof id === "string" && /^[0-9A-Za-z-]{1,64}$/.test(id);
  if (!isGood || typeof changed_ms !== "number")
    throw new FileRefused(`${name} is damaged. Nothing was changed.`);
  return { kind, id, changed_ms, text: whole.slice(end + 1) };
}

function headIn(line: string): Record<string, unknown> | null {
  try {
    const head: unknown = JSON.parse(line);
    return typeof head === "object" && head !== null && "coldstow-parcel" in head ? { ...head } : null;
  } catch {
    return null;
  }
}

/** Unpacks bit by bit and stops at the bound, so that a small parcel cannot fill the memory. */
async function inflated(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<string> {
  const reader = stream(bytes, new DecompressionStream("deflate")).getReader();
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let text = "";
  let total = 0;
  try {
    for (;;) {
      const { done, value } = (await reader.read()) as ReadableStreamReadResult<Uint8Array>;
      if (done) return text + decoder.decode();
      total += value.length;
      if (total > MOST_BYTES) break;
      text += decoder.decode(value, { stream: true });
    }
  } catch {
    throw new FileRefused(`${name} is damaged or was cut short. Nothing was changed.`);
  }
  reader.cancel().catch(() => {});
  throw new FileRefused(`${name} unpacks to more than the 2 MB of a trip. Nothing was changed.`);
}
