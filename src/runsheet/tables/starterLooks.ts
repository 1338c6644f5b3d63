import type { WeightUnit } from "../settings";

/** How columns of starter tables look, whatever their type. */

export const fillHeading = (unit: WeightUnit): string => `Fill weight (${unit})`;
export const weightLook = (unit: WeightUnit) => ({
  width: 14,
  format: unit === "g" ? "0.0" : unit === "oz" ? "0.00" : "0.000",
});
export const RATE = { width: 16, format: "0.0%" };
export const MONEY = { width: 14, format: "#,##0.00" };
