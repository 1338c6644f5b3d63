/** What a newcomer sees: what this is, in a line, and the ways on. */

import { byId } from "./byId";

export interface Ways {
  lookAtDemo(): void;
  startOwn(): void;
  openFile(): void;
}

/** Shows the ways on in place of what only an open workbook of one's own needs, until one of them is taken. */
export class Welcome {
  readonly #ways: Ways;

  constructor(ways: Ways) {
    this.#ways = ways;
    const press = (id: string, way: () => void) =>
      byId(id).addEventListener("click", () => {
        this.hide();
        way();
      });
    press("look", () => this.#ways.lookAtDemo());
    press("start", () => this.#ways.startOwn());
    // The chooser of files may be left without a file: the ways on stay until one is opened.
    byId("open-own").addEventListener("click", () => this.#ways.openFile());
  }

  /** Who has worked here before still finds her other workbooks. */
  show({ isNew }: { readonly isNew: boolean }): void {
    document.body.classList.toggle("new-here", isNew);
    byId("welcome").hidden = false;
  }

  hide(): void {
    document.body.classList.remove("new-here");
    byId("welcome").hidden = true;
  }
}
