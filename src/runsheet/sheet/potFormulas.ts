import { FIX, FIX_ACTUAL, IS_CAPACITY, IS_DIVISION, IS_LOSS } from "./inputChecks";
import { HEAD, keyOf, type Rows, rangeAt, type SheetColumn } from "./layout";

/** The formulas of a pot. */
export class PotFormulas {
  /** @param rows of its ingredients */
  constructor(
    private readonly rows: Rows,
    private readonly scentNumber: number,
  ) {}

  /** Until each ingredient of use is weighed there is no load. */
  get isWeighed(): string {
    const isMissing = `(1-ISNUMBER(${this.ingredients("actual")}))`;
    const missing = `SUMPRODUCT(${this.isKeyed}*(${this.ingredients("share")}<>0)*${isMissing})`;
    const key = keyOf(this.scentNumber, "wax");
    const wax = `SUMIF(${this.ingredients("key")},"${key}",${this.ingredients("actual")})`;
    return `AND(${missing}=0,${this.areActual},${wax}>0)`;
  }

  /** The weights of all ingredients, which spill down over their rows. */
  weights(candles: Rows): string {
    // What cannot be must not become a weight, and a blank share not the other ingredients' gain.
    const poured = `SUMPRODUCT(${inRows("count", candles)},${inRows("fill", candles)})`;
    const toMelt = `IF(AND(${IS_LOSS},${this.areShares},${arePoured(candles)}),${poured}*(1+${HEAD.loss}),NA())`;
    return `=POUR.RECIPESPLIT(${toMelt},${this.ingredients("share")},${this.ingredients("basis")},${HEAD.division})`;
  }

  get total(): string {
    return `=${this.sumOf("planned")}`;
  }

  get actualTotal(): string {
    const sum = `IF(${this.areActual},${this.sumOf("actual")},"Fix above")`;
    return `=IF(COUNT(${this.ingredients("actual")})=0,"",${sum})`;
  }

  /** What keeps the pot from being weighed, the first that holds. */
  remark(candles: Rows): string {
    const remarks = this.ingredients("remark");
    const onlyActual = `COUNTIF(${remarks},"${FIX}*")=COUNTIF(${remarks},"${FIX_ACTUAL}")`;
    const checks = [
      [IS_DIVISION, "Fix what the scale reads to"],
      [IS_LOSS, "Fix the extra to melt (loss)"],
      [arePoured(candles), "Fix the counts and fills below"],
      [`AND(${this.areShares},${onlyActual})`, "Fix the shares above"],
      [`ISNUMBER(${this.sumOf("planned")})`, "Fix the shares: some wax, less scent"],
      [IS_CAPACITY, "Fix what the pot holds"],
      [`${this.sumOf("planned")}<=${HEAD.capacity}+${HEAD.division}/2`, "More than the pot holds"],
    ];
    return `=${checks.reduceRight((then, [holds, remark]) => `IF(${holds},${then},"${remark}")`, '""')}`;
  }

  private get areActual(): string {
    return `COUNTIF(${this.ingredients("remark")},"${FIX_ACTUAL}")=0`;
  }

  private get areShares(): string {
    return `SUMPRODUCT(${this.isKeyed}*(1-ISNUMBER(${this.ingredients("share")})))=0`;
  }

  /** Rows that a maker puts in between have no key: nothing is wrong with what they leave blank. */
  private get isKeyed(): string {
    return `(${this.ingredients("key")}<>"")`;
  }

  private sumOf(column: SheetColumn): string {
    return `SUM(${this.ingredients(column)})`;
  }

  private ingredients(column: SheetColumn): string {
    return inRows(column, this.rows);
  }
}

const inRows = (column: SheetColumn, { first, last }: Rows): string => rangeAt(column, first, last);
const arePoured = (candles: Rows): string => `ISNUMBER(SUM(${inRows("fillShown", candles)}))`;
