/** A candle of the range: what it is in and made of, the minutes that one takes, and what it sells for. */
type Product = readonly [candle: string, vessel: string, scent: string, minutes: number, price: number];

export const PRODUCTS: readonly Product[] = [
  ["Quince, medium tin", "Medium tin", "Lamplit quince", 4, 9.5],
  ["Quince, tumbler", "Straight tumbler", "Lamplit quince", 5, 17],
  ["Quince, wide bowl", "Wide bowl", "Lamplit quince", 10, 45],
  ["Cedar, small tin", "Small tin", "Attic cedar", 4, 7],
  ["Cedar, glass", "Tapered glass", "Attic cedar", 6, 16],
  ["Cedar, tall tumbler", "Tall tumbler", "Attic cedar", 6, 21],
  ["Plum, small tin", "Small tin", "Plum thunder", 4, 7.5],
  ["Plum, hexagon jar", "Hexagon jar", "Plum thunder", 5, 12],
  ["Plum, footed bowl", "Footed bowl", "Plum thunder", 8, 28],
  ["Rain, tumbler", "Straight tumbler", "Rain on slate", 5, 16],
  ["Rain, tall tumbler", "Tall tumbler", "Rain on slate", 6, 19.5],
  ["Rain, mug", "Stoneware mug", "Rain on slate", 6, 24],
  ["Bare, tea-light cup", "Tea-light cup", "Bare, no scent", 1, 1.2],
  ["Bare, medium tin", "Medium tin", "Bare, no scent", 4, 8.5],
];
