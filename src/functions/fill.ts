import { blendFactor } from "../core/fill/blendFactor";
import { checkedPour } from "../core/fill/checkedPour";
import { fillByVolume } from "../core/fill/fillByVolume";
import { fillWeight } from "../core/fill/fillWeight";
import { vesselVolume } from "../core/fill/vesselVolume";
import { waterVolume } from "../core/fill/waterVolume";
import { waxFactor as slopeOfPours } from "../core/fill/waxFactor";
import { waxFactorSpread } from "../core/fill/waxFactorSpread";
import { aboveZeroOr, answer, mapCells, number, numberOr, text, textOr, unit, valuesOf, zipRanges } from "./cells";

/**
 * Weight of wax and scent (fragrance oil) together that fills what the water filled.
 * @customfunction FILLWEIGHT
 * @param water Weight of the water the vessel holds to its fill line, any one weight unit; a cell or a range.
 * @param waxFactor Weight of wax for one weight of water, above 0 and at most 2, no unit; 0.86 when left out.
 * @returns Fill weight, in the unit of the water.
 * @example =POUR.FILLWEIGHT(250) gives 215
 * @source Common practice, no source: a soy-type container wax fills about 0.86 of the weight of water. Your own test pour gives a better factor.
 */
export function FILLWEIGHT(water: any[][], waxFactor?: any[][]): any[][] {
  return mapCells([number("water", water), aboveZeroOr("waxFactor", waxFactor)], fillWeight);
}

/**
 * Volume of weighed water.
 * @customfunction WATERVOLUME
 * @param water Weight of the water, in weightUnit; a cell or a range.
 * @param weightUnit Unit of the weight: g, kg, oz or lb.
 * @param volumeUnit Unit of the result: ml, l, floz (US fluid ounce), in3 or cm3; ml when left out.
 * @param temperature Temperature of the water, 0 to 40 C, in temperatureUnit; 20 C when left out.
 * @param temperatureUnit Unit of the temperature: C or F; C when left out.
 * @returns Volume, in volumeUnit.
 * @example =ROUND(POUR.WATERVOLUME(250, "g"), 1) gives 250.4
 * @source Density of water by Tanaka et al. 2001, the CIPM formula, 0 to 40 C.
 */
export function WATERVOLUME(
  water: any[][],
  weightUnit: any[][],
  volumeUnit?: any[][],
  temperature?: any[][],
  temperatureUnit?: any[][],
): any[][] {
  return mapCells(
    [
      number("water", water),
      unit("weightUnit", weightUnit, "weight"),
      textOr("volumeUnit", volumeUnit),
      numberOr("temperature", temperature),
      textOr("temperatureUnit", temperatureUnit),
    ],
    waterVolume,
  );
}

/**
 * Weight of wax and scent (fragrance oil) together that fills a volume.
 * @customfunction FILLBYVOLUME
 * @param volume Volume to the fill line, in volumeUnit; a cell or a range.
 * @param volumeUnit Unit of the volume: ml, l, floz (US fluid ounce), in3 or cm3.
 * @param weightUnit Unit of the result: g, kg, oz or lb.
 * @param density Density of the poured mixture in g/mL, above 0 and at most 2; 0.86 when left out.
 * @returns Fill weight, in weightUnit.
 * @example =POUR.FILLBYVOLUME(250, "ml", "g") gives 215
 * @source Weight is volume times density. Default density: common practice, no source.
 */
export function FILLBYVOLUME(volume: any[][], volumeUnit: any[][], weightUnit: any[][], density?: any[][]): any[][] {
  return mapCells(
    [
      number("volume", volume),
      unit("volumeUnit", volumeUnit, "volume"),
      unit("weightUnit", weightUnit, "weight"),
      aboveZeroOr("density", density),
    ],
    fillByVolume,
  );
}

/**
 * Volume of a vessel from its inside measures up to the fill line.
 * @customfunction VESSELVOLUME
 * @param shape Shape of the inside: "round", "box", "oval", "hexagon" or "bowl".
 * @param width Inside width, in lengthUnit: round, at the foot; box, one side; oval, one axis; hexagon, across the flats; bowl, of the rim at the fill line. A cell or a range.
 * @param fillHeight Height from the inside floor to the fill line, in lengthUnit; a cell or a range.
 * @param lengthUnit Unit of the measures: mm, cm or in.
 * @param second Second width, in lengthUnit: round, at the fill line of a tapered vessel (straight when left out); box, the other side (square when left out); oval, the other axis.
 * @param volumeUnit Unit of the result: ml, l, floz (US fluid ounce), in3 or cm3; ml when left out.
 * @returns Volume, in volumeUnit.
 * @example =POUR.VESSELVOLUME("box", 8, 10, "cm", 6) gives 480
 * @source Solid geometry: the frustum of a cone, upright prisms on a rectangle, an ellipse and a regular hexagon, the spherical cap.
 */
export function VESSELVOLUME(
  shape: any[][],
  width: any[][],
  fillHeight: any[][],
  lengthUnit: any[][],
  second?: any[][],
  volumeUnit?: any[][],
): any[][] {
  return mapCells(
    [
      text("shape", shape),
      number("width", width),
      number("fillHeight", fillHeight),
      unit("lengthUnit", lengthUnit, "length"),
      numberOr("second", second),
      textOr("volumeUnit", volumeUnit),
    ],
    vesselVolume,
    { key: 1 },
  );
}

/**
 * Wax factor from test pours: weight of wax for one weight of water. Rows with a blank are left out.
 * @customfunction WAXFACTOR
 * @param water Weights of water that filled the vessels, any one weight unit; a range.
 * @param poured Weights of wax that filled the same spaces, without the vessels, in the same unit; a range of the same size.
 * @returns Weight of wax for one weight of water, no unit. A pour whose own factor lies outside 0.6 to 1.1 is an error that names its row: no wax makes it.
 * @example =POUR.WAXFACTOR({200;300}, {172;258}) gives 0.86
 * @source Least squares through the origin; that waxes lie between 0.6 and 1.1 of water is common practice, no source. Checked against the NIST Statistical Reference Datasets NoInt1 and NoInt2.
 */
export function WAXFACTOR(water: any[][], poured: any[][]): any[][] {
  return answer(() => slopeOfPours(pours(water, poured)));
}

/**
 * How sure the wax factor is: half the width of its 95 % interval. #N/A under two test pours.
 * @customfunction WAXFACTORSPREAD
 * @param water Weights of water that filled the vessels, any one weight unit; a range.
 * @param poured Weights of wax that filled the same spaces, without the vessels, in the same unit; a range of the same size.
 * @returns Half-width of the interval, in the unit of the factor.
 * @example =ROUND(POUR.WAXFACTORSPREAD({4;5;6}, {3;4;4}), 6) gives 0.181067
 * @source Student's t times the standard error of the slope; the error is checked against NIST StRD NoInt1 and NoInt2.
 */
export function WAXFACTORSPREAD(water: any[][], poured: any[][]): any[][] {
  return answer(() => waxFactorSpread(pours(water, poured)));
}

const pours = (water: any[][], poured: any[][]) =>
  valuesOf(zipRanges([number("water", water, "blank"), number("poured", poured, "blank")], [0, 1]), (filled, wax) =>
    checkedPour({ water: filled, poured: wax }),
  );

/**
 * Wax factor of a mixture of wax and scent (fragrance oil), their volumes adding.
 * @customfunction BLENDFACTOR
 * @param waxFactor Weight of the wax for one weight of water, above 0 and at most 2, no unit; a cell or a range.
 * @param scentFactor Weight of the scent for one weight of water, above 0 and at most 2, no unit; a cell or a range.
 * @param load Scent load, a fraction or percentage below 100 %, on basis; a cell or a range.
 * @param basis What the load is a share of: "of wax" or "of total"; "of wax" when left out.
 * @returns Factor of the mixture, no unit.
 * @example =ROUND(POUR.BLENDFACTOR(0.998, 1.834, 50%, "of total"), 4) gives 1.2926
 * @source Ideal mixing, 1/density = sum of share/density. A real mixture can miss it by several per cent: a test pour tells.
 */
export function BLENDFACTOR(waxFactor: any[][], scentFactor: any[][], load: any[][], basis?: any[][]): any[][] {
  return mapCells(
    [number("waxFactor", waxFactor), number("scentFactor", scentFactor), number("load", load), textOr("basis", basis)],
    blendFactor,
  );
}
