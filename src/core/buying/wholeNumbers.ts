/**
 * Numbers as whole multiples of one power of ten, 10^exponent, exactly.
 * Each number is first taken to the 15 digits a spreadsheet keeps, so 0.1 + 0.2 counts as 0.3.
 * @param values 0 or more, finite
 */
export function wholeNumbers(values: readonly number[]): { wholes: bigint[]; exponent: number } {
  const parts = values.map((value) => {
    const [digits = "0", exponent] = value.toExponential(14).split("e");
    return { digits: BigInt(digits.replace(".", "")), exponent: Number(exponent) - 14 };
  });
  const least = Math.min(0, ...parts.map(({ exponent }) => exponent));
  return {
    wholes: parts.map(({ digits, exponent }) => digits * 10n ** BigInt(exponent - least)),
    exponent: least,
  };
}
