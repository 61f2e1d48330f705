/** "Fri 16 Jul 09:00" of a local ISO moment. */
export function momentSaid(iso: string): string {
  const [, year, month, day, clock] = /^(\d+)-(\d+)-(\d+)T(\d+:\d+)/.exec(iso) ?? [];
  if (clock === undefined) return iso;
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  const words = new Intl.DateTimeFormat("en-GB", {
    weekday: "short",
    day: "numeric",
    month: "short",
    timeZone: "UTC",
  });
  return `${words.format(date).replace(",", "")} ${clock}`;
}

/** The day of a local ISO moment, in words. */
export const daySaid = (iso: string): string => momentSaid(iso).split(" ").slice(0, 3).join(" ");
