import { parseQuantity } from "../quantity/parse.ts";

const COUNTED = /^(\d+)\s*[×x]\s*(.+)$/;

/**
 * One of several equal parts of an amount, in the unit that was typed: "2.4 kg" in three is "0.8 kg of 2.4 kg",
 * "24 × 355 mL" in seven is "3 of 24 × 355 mL". Counted pieces are dealt out whole, and all parts add up.
 *
 * @param index 0 for the first
 * @param parts how many there are
 */
export function partWords(amount: string, index: number, parts: number): string {
  if (parts <= 1) return amount;
  const counted = COUNTED.exec(amount.trim());
  if (counted !== null) {
    const count = Number(counted[1]);
    const upTo = (n: number): number => Math.round((count * n) / parts);
    const pieces = upTo(index + 1) - upTo(index);
    return pieces === 0 ? "" : `${pieces} of ${amount}`;
  }
  const readings = [parseQuantity(amount, "mass"), parseQuantity(amount, "volume")];
  const found = readings.find((reading) => reading.ok);
  if (found?.ok !== true) return `part ${index + 1} of ${parts}`;
  const { typedValue, unit } = found.quantity;
  return `${rounded(typedValue / parts)} ${unit.symbol} of ${amount}`;
}

/** Two figures, and never in powers of ten. */
function rounded(share: number): string {
  return share >= 100 ? String(Math.round(share)) : String(Number(share.toPrecision(2)));
}
