import type { PlainSums } from "../plainSums";
import { monthByHand } from "./byHand";
import { type Line, NO_LOT, type Receipt, type Weighed } from "./month";
import { FIRST, LOOKS, PACKS, SCENTS, SHELF, VESSELS } from "./studio";

/** What the second calculation knows of so far, and what it comes to. */
export class Records {
  readonly runs: { run: string; date: number }[] = [];
  readonly lines: Line[] = [];
  readonly weighed: Weighed[] = [];
  readonly receipts: Receipt[] = [...FIRST, ...SHELF];
  #sums!: PlainSums;

  /** The tables in a new calculation. */
  calculate(): void {
    const { runs, lines, weighed, receipts } = this;
    const [first = NO_LOT, second = NO_LOT] = runs.map(({ run }) => run);
    this.#sums = monthByHand({
      studio: { loss: 0.03, waxFactor: 0.86, labourMinutes: 3, labourRate: 20 },
      ...{ vessels: VESSELS, scents: SCENTS, packs: PACKS, receipts, runs, lines, weighed },
      looks: LOOKS.map((date, i) => ({ date, run: [first, second, second, NO_LOT][i] as string })),
      shopping: 1,
    });
  }

  of(...asked: Parameters<PlainSums["of"]>) {
    return this.#sums.of(...asked);
  }

  all(...asked: Parameters<PlainSums["all"]>) {
    return this.#sums.all(...asked);
  }
}
