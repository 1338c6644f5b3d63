/** Packs to choose from to cover a need, all in whole numbers: sizes in the unit of the need, prices in one unit of money. */
export interface PackTask {
  readonly need: bigint;
  readonly packs: readonly { readonly size: bigint; readonly price: bigint }[];
}
