/**
 * A caller's mistake: a number outside the range a law or an act accepts. It is not for what a person typed; those
 * mistakes are lists of problems.
 */
export class DomainError extends Error {
  override readonly name: string = "DomainError";
}

/** A broken model: books that do not balance, a step that does not converge. A bug of ours, with its size. */
export class ModelError extends Error {
  override readonly name: string = "ModelError";
  /** What was left over, in the unit that the message names. */
  readonly residual: number;

  constructor(message: string, residual: number) {
    super(`${message} (residual ${residual})`);
    this.residual = residual;
  }
}

/**
 * Passes `value` through when it lies in `min`…`max`, ends included; neither NaN nor an infinite value ever passes.
 *
 * @param name the argument's name with its unit, as in `outside_C`
 * @throws DomainError "outside_C must be −60…90, got 300"
 */
export function requireFinite(name: string, value: number, min: number, max: number): number {
  if (Number.isFinite(value) && value >= min && value <= max) return value;
  throw new DomainError(`${name} must be ${withMinus(min)}…${withMinus(max)}, got ${withMinus(value)}`);
}

function withMinus(value: number): string {
  return String(value).replace(/^-/, "−");
}
