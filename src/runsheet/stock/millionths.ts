/**
 * Amounts as whole millionths: they add up and go down to nothing exactly, which binary fractions do not. Up to nine
 * thousand million units are exact, and no scale in use reads to less than a thousandth.
 */
const ONE = 1_000_000;

export const toMillionths = (amount: number): number => Math.round(amount * ONE);
export const fromMillionths = (millionths: number): number => millionths / ONE;
