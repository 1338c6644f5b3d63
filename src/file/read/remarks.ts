import type { Remark } from "../book";

/** What becomes of something that the file keeps, and of several such things. */
export const KEPT = {
  one: "The page does not show it; it stays in the file when you save.",
  many: "The page does not show them; they stay in the file when you save.",
};

/** What is said of what a file holds beside what the page shows. */
export class Remarks {
  readonly all: Remark[] = [];

  add(sheet: string | null, what: string, consequence: string): void {
    this.all.push({ sheet, what, consequence });
  }

  /** Something that is counted and that stays in the file unseen; nothing when there is none. */
  addKept(sheet: string | null, count: number, one: string, many: string): void {
    if (count === 1) this.add(sheet, one, KEPT.one);
    if (count > 1) this.add(sheet, `${count} ${many}`, KEPT.many);
  }
}
