/** Nearest integer of numerator / denominator, half away from zero. The denominator is positive. */
export function nearest(numerator: bigint, denominator: bigint): bigint {
  const magnitude = numerator < 0n ? -numerator : numerator;
  const rounded = (2n * magnitude + denominator) / (2n * denominator);
  return numerator < 0n ? -rounded : rounded;
}

/** numerator / denominator as a decimal, rounded once to at most `decimals` places; zeros at the end are left off. */
export function decimalText(numerator: bigint, denominator: bigint, decimals: number): string {
  const scaled = nearest(numerator * 10n ** BigInt(decimals), denominator);
  const digits = (scaled < 0n ? -scaled : scaled).toString().padStart(decimals + 1, "0");
  const whole = digits.slice(0, digits.length - decimals);
  const part = digits.slice(digits.length - decimals).replace(/0+$/, "");
  return `${scaled < 0n ? "-" : ""}${whole}${part === "" ? "" : `.${part}`}`;
}

/** The stored integer as a bigint. A value that is no safe integer never was a stored one: a bug, so it throws. */
export function storedInteger(value: number): bigint {
  if (!Number.isSafeInteger(value)) throw new RangeError(`not a stored integer: ${value}`);
  return BigInt(value);
}
