/**
 * The value that 95 per cent of F(1, n) lie below, which is the square of the two-sided 5 per cent point of Student's t with n degrees of
 * freedom: by the tail area in closed form (Abramowitz and Stegun 1964, 26.7.3 and 26.7.4) and bisection.
 */
export function studentSquared(degrees: number): number {
  let [low, high] = [0, 1000];
  for (let i = 0; i < 80; i += 1) {
    const middle = (low + high) / 2;
    if (centralArea(middle, degrees) < 0.95) low = middle;
    else high = middle;
  }
  return low * low;
}

/** The share of Student's t with n degrees of freedom that lies between -t and t. */
function centralArea(t: number, n: number): number {
  const angle = Math.atan(t / Math.sqrt(n));
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  // Odd n: (2/pi) (angle + sin (cos + 2/3 cos^3 + ...)); even n: sin (1 + 1/2 cos^2 + 3/8 cos^4 + ...).
  let term = n % 2 === 1 ? cos : 1;
  let sum = n === 1 ? 0 : term;
  for (let k = n % 2 === 1 ? 3 : 2; k < n - 1; k += 2) {
    term *= ((k - 1) / k) * cos * cos;
    sum += term;
  }
  return n % 2 === 1 ? (2 / Math.PI) * (angle + sin * sum) : sin * sum;
}
