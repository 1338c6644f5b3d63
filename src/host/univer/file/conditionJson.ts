/** A conditional format as the plugin keeps it. */

import type { IRange, IStyleBase } from "@univerjs/core";
import type { Condition } from "../../../file/book";

export interface ConditionJson {
  readonly cfId: string;
  readonly ranges: readonly IRange[];
  readonly stopIfTrue: boolean;
  readonly rule: RuleJson;
}

export type ConditionsJson = Readonly<Record<string, readonly ConditionJson[]>>;

export interface ValueJson {
  readonly type: string;
  readonly value?: number | string;
}

/** Another look where something is so. */
export interface HighlightJson {
  readonly type: "highlightCell";
  readonly subType: string;
  readonly style?: IStyleBase;
  readonly operator?: string;
  readonly value?: unknown;
  readonly isBottom?: boolean;
  readonly isPercent?: boolean;
  /** One that the plugin has no words for: it goes along with its cells, also into a duplicate of the sheet. */
  readonly kept?: Condition;
}

export interface BarJson {
  readonly type: "dataBar";
  readonly isShowValue: boolean;
  readonly config: {
    readonly min: ValueJson;
    readonly max: ValueJson;
    readonly isGradient: boolean;
    readonly positiveColor: string;
    readonly nativeColor: string;
  };
}

export interface ColorsJson {
  readonly type: "colorScale";
  readonly config: readonly { readonly index: number; readonly color: string; readonly value: ValueJson }[];
}

export interface IconsJson {
  readonly type: "iconSet";
  readonly isShowValue: boolean;
  /** The highest values first. */
  readonly config: readonly {
    readonly operator: string;
    readonly value: ValueJson;
    readonly iconType: string;
    readonly iconId: string;
  }[];
}

export type ScaleJson = BarJson | ColorsJson | IconsJson;
export type RuleJson = HighlightJson | ScaleJson;
