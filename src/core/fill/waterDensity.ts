import { plain } from "../check/plain";
import { wrong } from "../check/wrong";

/**
 * Density of water in g/mL at a temperature in C, 0 to 40; a fault outside.
 * Source: Tanaka et al. 2001, Metrologia 38, the CIPM formula.
 */
export function waterDensity(celsius: number): number {
  if (!(celsius >= 0 && celsius <= 40)) {
    throw wrong(
      "temperature",
      `${plain(celsius)} C is outside 0 to 40 C, where the density of water is known; check its unit or weigh the water again`,
    );
  }
  const [a1, a2, a3, a4, a5] = [-3.983035, 301.797, 522528.9, 69.34881, 999.97495];
  const kilogramsInCubicMetre = a5 * (1 - ((celsius + a1) ** 2 * (celsius + a2)) / (a3 * (celsius + a4)));
  return kilogramsInCubicMetre / 1000;
}
