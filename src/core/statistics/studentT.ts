/**
 * The value that Student's t with whole degrees of freedom stays within, either side of 0, with probability
 * `within`. For whole degrees the distribution is a finite sum in the angle whose tangent is t / sqrt(degrees)
 * (Abramowitz & Stegun 26.7.3 and 26.7.4), rising with the angle, so halving finds it to the last digits.
 * @param degrees whole number, 1 or more
 * @param within above 0 and below 1; 0.95 when left out
 */
export function studentT(degrees: number, within = 0.95): number {
  const share = (angle: number): number => {
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    const odd = degrees % 2;
    let term = odd ? cos : 1;
    let total = degrees > 1 ? term : 0;
    for (let k = odd ? 3 : 2; k <= degrees - 2; k += 2) {
      term *= ((k - 1) / k) * cos * cos;
      total += term;
    }
    return odd ? (2 / Math.PI) * (angle + sin * total) : sin * total;
  };
  let [low, high] = [0, Math.PI / 2];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (share(middle) < within) low = middle;
    else high = middle;
  }
  return Math.sqrt(degrees) * Math.tan(low);
}
