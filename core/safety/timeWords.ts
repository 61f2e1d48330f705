/**
 * "40 min" or "2.5 h", rounded up to whole minutes: no warm minute is lost in print.
 *
 * @source common-practice
 */
export function hourWords(time_s: number): string {
  const minutes = Math.ceil(time_s / 60 - 1e-9);
  if (minutes < 60) return `${minutes} min`;
  return `${Math.round(minutes / 6) / 10} h`;
}

/**
 * "1 day", "2.4 days".
 *
 * @source common-practice
 */
export function dayWords(time_s: number): string {
  const days = Math.round(time_s / 8640) / 10;
  return `${days} ${days === 1 ? "day" : "days"}`;
}
