/** Panels at a cell, such as its note, stay whole on the screen: Univer puts them beside a wide cell, wherever that ends. */

import type { Injector } from "@univerjs/core";
import { SheetCanvasPopManagerService } from "@univerjs/preset-sheets-core";

export function keepPopUpsWhole(injector: Injector): void {
  const popUps = injector.get(SheetCanvasPopManagerService);
  const { attachPopupToCell } = popUps;
  popUps.attachPopupToCell = function (row, column, popUp, ...more) {
    // Their size is known only once they are drawn.
    return attachPopupToCell.call(
      this,
      row,
      column,
      { ...popUp, noPushMinimumGap: false, autoRelayout: true },
      ...more,
    );
  };
}
