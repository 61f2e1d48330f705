/** `must` continues the words "it must be …". */
export type ClockReading = { ok: true; clock_s: number } | { ok: false; must: string };

/**
 * Reads a time of day, `07:00` or `19:30:15`, as seconds since midnight. It is local time without a zone, not a moment.
 *
 * @returns 0…86400 (`24:00` is the end of the day); never throws
 */
export function parseClock(text: string): ClockReading {
  const refused = { ok: false, must: "a time of day from 00:00 to 24:00, such as 07:00" } as const;
  if (text.length > 100) return refused;
  const parts = /^\s*(\d{1,2}):(\d{2})(?::(\d{2}))?\s*$/.exec(text);
  if (parts === null) return refused;
  const [hour, minute, second] = [Number(parts[1]), Number(parts[2]), Number(parts[3] ?? 0)];
  const clock_s = hour * 3600 + minute * 60 + second;
  if (minute > 59 || second > 59 || clock_s > 86400) return refused;
  return { ok: true, clock_s };
}
