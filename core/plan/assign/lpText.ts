/** Terms of a sum: coefficient and column. */
export type Terms = readonly (readonly [number, string])[];

/** Enough digits that nothing is lost which a cooler could notice, and no exponent that a reader may not know. */
const digits = (value: number): string => String(Number(value.toFixed(6)));

function sumText(terms: Terms): string {
  const shown = terms.filter(([by]) => Math.abs(by) >= 5e-7);
  if (shown.length === 0) return "0 nothing";
  const parts = shown.map(([by, column]) => `${by < 0 ? "-" : "+"} ${digits(Math.abs(by))} ${column}`);
  // Lines in this format may not grow without bound.
  return parts.map((part, i) => (i > 0 && i % 8 === 0 ? `\n ${part}` : part)).join(" ");
}

/** Collects a mixed-integer linear program and writes it as LP text. Columns are ≥ 0 and, if binary, 0 or 1. */
export class LpText {
  readonly #cost: [number, string][] = [];
  readonly #rows: string[] = [];
  readonly #binary = new Set<string>();

  cost(by: number, column: string): void {
    this.#cost.push([by, column]);
  }

  row(terms: Terms, relation: "<=" | ">=" | "=", bound: number): void {
    this.#rows.push(` r${this.#rows.length}: ${sumText(terms)} ${relation} ${digits(bound)}`);
  }

  binary(column: string): void {
    this.#binary.add(column);
  }

  /** The same calls in the same order give the same text. */
  text(): string {
    const binary = [...this.#binary].map((column) => ` ${column}`).join("\n");
    return [
      "Minimize",
      ` obj: ${sumText(this.#cost)}`,
      "Subject To",
      ...this.#rows,
      ...(binary === "" ? [] : ["Binary", binary]),
      "End",
      "",
    ].join("\n");
  }
}
