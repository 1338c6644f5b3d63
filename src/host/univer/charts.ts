/** The charts of the open workbook, drawn over its cells and drawn anew when those change. */

import {
  CommandType,
  ICommandService,
  type Injector,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { IRenderManagerService, SHEET_VIEWPORT_KEY, SheetSkeletonManagerService } from "@univerjs/preset-sheets-core";
import { plotsOf, type ReadCell } from "../../sheet/chart/data";
import { chartSvg } from "../../sheet/chart/svg";
import type { Sheet } from "../../sheet/sheet";
import { reader } from "./cells";
import { followCells, type PlacedCharts, placeCharts } from "./placedCharts";

/** The scroll bars at the edges of the cells, in pixels, stay free. */
const SCROLL_BAR = 14;

export class ChartLayer {
  readonly #injector: Injector;
  readonly #layer = document.createElement("div");
  readonly #workbooks = new Map<string, PlacedCharts>();
  readonly #drawn: string[] = [];
  #open = "";
  #dark: boolean;
  #isDue = false;

  constructor(container: HTMLElement, injector: Injector, dark: boolean) {
    this.#injector = injector;
    this.#dark = dark;
    // Clicks and the mouse wheel are for the cells. Univer's canvas is at 8 and its cell editor at 10.
    this.#layer.style.cssText = "position: absolute; overflow: hidden; pointer-events: none; z-index: 9";
    injector.get(ICommandService).onCommandExecuted((command) => {
      const { unitId } = (command.params ?? {}) as { unitId?: string };
      const charts = this.#workbooks.get(this.#open);
      if (charts && command.type === CommandType.MUTATION && unitId === this.#workbook()?.getUnitId()) {
        this.#workbooks.set(this.#open, followCells(charts, command));
      }
      this.#drawSoon();
    });
    new ResizeObserver(() => this.#drawSoon()).observe(container);
  }

  /** Shows the charts of the workbook that was opened just now; those of one opened before are where they were left. */
  show(title: string, sheets: () => readonly Sheet[]): void {
    this.#open = title;
    if (!this.#workbooks.has(title)) {
      const idOf = (name: string) => this.#workbook()?.getSheetBySheetName(name)?.getSheetId() ?? "";
      this.#workbooks.set(title, placeCharts(sheets(), idOf));
    }
    this.#drawSoon();
  }

  setDark(dark: boolean): void {
    this.#dark = dark;
    this.#drawSoon();
  }

  #workbook() {
    return this.#injector.get(IUniverInstanceService).getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
  }

  /** With the next frame: changes come in bursts, and the cells scroll after the command that says so. */
  #drawSoon(): void {
    if (this.#isDue) return;
    this.#isDue = true;
    requestAnimationFrame(() => {
      this.#isDue = false;
      this.#draw();
    });
  }

  #draw(): void {
    const workbook = this.#workbook();
    const sheetId = workbook?.getActiveSheet()?.getSheetId();
    const charts = (this.#workbooks.get(this.#open)?.charts ?? []).filter((one) => one.sheetId === sheetId);
    const render = workbook && this.#injector.get(IRenderManagerService).getRenderById(workbook.getUnitId());
    const skeleton = render?.with(SheetSkeletonManagerService).getCurrentSkeleton();
    const cells = render?.scene.getViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
    const canvas = render?.engine.getCanvasElement();
    if (charts.length === 0 || !render || !skeleton || !cells || !canvas) {
      this.#layer.remove();
      return;
    }
    if (this.#layer.previousElementSibling !== canvas) canvas.after(this.#layer);
    place(this.#layer, canvas.offsetLeft + cells.left, canvas.offsetTop + cells.top);
    this.#layer.style.width = `${(cells.width ?? 0) - SCROLL_BAR}px`;
    this.#layer.style.height = `${(cells.height ?? 0) - SCROLL_BAR}px`;

    while (this.#layer.children.length > charts.length) this.#layer.lastElementChild?.remove();
    this.#drawn.length = this.#layer.children.length;
    const { scaleX, scaleY } = render.scene.getAncestorScale();
    const read = this.#reader();
    for (const [i, { chart }] of charts.entries()) {
      const { row, column, rows, columns } = chart.place;
      const { startX, startY } = skeleton.getCellWithCoordByIndex(row, column);
      const { endX, endY } = skeleton.getCellWithCoordByIndex(row + rows - 1, column + columns - 1);
      const image = (this.#layer.children[i] ?? this.#layer.appendChild(document.createElement("div"))) as HTMLElement;
      const [x, y] = [startX - cells.viewportScrollX, startY - cells.viewportScrollY];
      image.style.cssText = `position: absolute; transform: scale(${scaleX}, ${scaleY}); transform-origin: 0 0`;
      place(image, x * scaleX - cells.left, y * scaleY - cells.top);
      const size = { width: Math.round(endX - startX), height: Math.round(endY - startY) };
      const svg = chartSvg(chart, plotsOf(chart, read), { ...size, dark: this.#dark });
      if (this.#drawn[i] !== svg) image.innerHTML = svg;
      this.#drawn[i] = svg;
    }
  }

  /** Reads cells by the names their sheets had when the workbook was described. */
  #reader(): ReadCell {
    const readers = new Map(
      [...(this.#workbooks.get(this.#open)?.ids ?? [])].flatMap(([name, id]) => {
        const sheet = this.#workbook()?.getSheetBySheetId(id);
        return sheet ? [[name, reader(this.#injector, sheet)]] : [];
      }),
    );
    return (sheet, row, column) => readers.get(sheet)?.(row, column) ?? null;
  }
}

function place({ style }: HTMLElement, left: number, top: number): void {
  style.left = `${left}px`;
  style.top = `${top}px`;
}
