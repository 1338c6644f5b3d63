/** A candle of the range: what it is made of and in, how many are to be made, and what it sells for. */
interface Product {
  readonly candle: string;
  readonly scent: string;
  readonly vessel: string;
  readonly toMake: number;
  readonly price: number;
}

const product = (candle: string, scent: string, vessel: string, toMake: number, price: number): Product => ({
  candle,
  scent,
  vessel,
  toMake,
  price,
});

export const PRODUCTS: readonly Product[] = [
  product("Quince, small tin", "Lamplit quince", "Small tin", 24, 7.5),
  product("Quince, medium tin", "Lamplit quince", "Medium tin", 24, 12),
  product("Quince, tumbler", "Lamplit quince", "Straight tumbler", 18, 19),
  product("Quince, wide bowl", "Lamplit quince", "Wide bowl", 4, 42),
  product("Cedar, small tin", "Attic cedar", "Small tin", 18, 7),
  product("Cedar, medium tin", "Attic cedar", "Medium tin", 18, 11),
  product("Cedar, hexagon jar", "Attic cedar", "Hexagon jar", 12, 15),
  product("Cedar, tall tumbler", "Attic cedar", "Tall tumbler", 12, 19),
  product("Plum, small tin", "Plum thunder", "Small tin", 18, 7.5),
  product("Plum, medium tin", "Plum thunder", "Medium tin", 18, 11),
  product("Plum, hexagon jar", "Plum thunder", "Hexagon jar", 12, 14),
  product("Plum, footed bowl", "Plum thunder", "Footed bowl", 6, 25),
  product("Rain, small tin", "Rain on slate", "Small tin", 12, 7),
  product("Rain, tumbler", "Rain on slate", "Straight tumbler", 12, 17.5),
  product("Rain, tall tumbler", "Rain on slate", "Tall tumbler", 8, 18),
  product("Quince and cedar, medium tin", "Quince and cedar", "Medium tin", 24, 13),
  product("Quince and cedar, tumbler", "Quince and cedar", "Straight tumbler", 18, 18.5),
  product("Quince and cedar, wide bowl", "Quince and cedar", "Wide bowl", 4, 39),
  product("Bare, votive glass", "Bare", "Votive glass", 40, 4.5),
  product("Bare, tumbler", "Bare", "Straight tumbler", 10, 15),
];
