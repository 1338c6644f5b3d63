/** The charts of the open workbook, drawn over its cells and drawn anew when those change. */

import {
  CommandType,
  ICommandService,
  type Injector,
  IResourceManagerService,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { IRenderManagerService, SHEET_VIEWPORT_KEY, SheetSkeletonManagerService } from "@univerjs/preset-sheets-core";
import { reader } from "../../engine/cells";
import { plotsOf, type ReadCell } from "../../sheet/chart/data";
import { chartSvg } from "../../sheet/chart/svg";
import { followCells } from "./followCells";
import { CHARTS_RESOURCE, type PlacedCharts, readCharts, writeCharts } from "./placedCharts";

/** The scroll bars at the edges of the cells, in pixels, stay free. */
const SCROLL_BAR = 14;

export class ChartLayer {
  readonly #injector: Injector;
  readonly #layer = document.createElement("div");
  /** By the ids of the open workbooks. */
  readonly #workbooks = new Map<string, PlacedCharts>();
  readonly #drawn: string[] = [];
  #dark: boolean;
  #isDue = false;

  constructor(container: HTMLElement, injector: Injector, dark: boolean) {
    this.#injector = injector;
    this.#dark = dark;
    // Clicks and the mouse wheel are for the cells. Univer's canvas is at 8 and its cell editor at 10.
    this.#layer.style.cssText = "position: absolute; overflow: hidden; pointer-events: none; z-index: 9";
    injector.get(ICommandService).onCommandExecuted((command) => {
      const { unitId } = (command.params ?? {}) as { unitId?: string };
      const charts = this.#workbooks.get(unitId ?? "");
      if (unitId && charts && command.type === CommandType.MUTATION) {
        this.#workbooks.set(unitId, followCells(charts, command));
      }
      this.#drawSoon();
    });
    injector.get(IResourceManagerService).registerPluginResource<PlacedCharts>({
      pluginName: CHARTS_RESOURCE,
      businesses: [UniverInstanceType.UNIVER_SHEET],
      parseJson: readCharts,
      onLoad: (unitId, charts) => {
        this.#workbooks.set(unitId, charts);
        this.#drawSoon();
      },
      onUnLoad: (unitId) => {
        this.#workbooks.delete(unitId);
      },
      toJson: (unitId) => {
        const charts = this.#workbooks.get(unitId);
        return charts ? writeCharts(charts) : "";
      },
    });
    new ResizeObserver(() => this.#drawSoon()).observe(container);
  }

  setDark(dark: boolean): void {
    this.#dark = dark;
    this.#drawSoon();
  }

  #charts(): PlacedCharts | undefined {
    return this.#workbooks.get(this.#workbook()?.getUnitId() ?? "");
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
    const charts = (this.#charts()?.charts ?? []).filter((one) => one.sheetId === sheetId);
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
      [...(this.#charts()?.ids ?? [])].flatMap(([name, id]) => {
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
