import type { FWorksheet } from "@univerjs/sheets/facade";
import type { ChartRecord, SheetExtras } from "../../../excel-stand-in/excel/sheet-extras";
import { viewOf } from "../grid-canvas";
import type { Session } from "../session";
import { chartSeries } from "./chart-data";
import { placeOf } from "./chart-place";

const settleMs = 150;

/**
 * Draws the charts of the sheet on show over the grid, which has none of its own. A layer of ours, not the grid's
 * floating elements: those would enter its undo history and its snapshot, where the charts are kept already.
 * Clicks and the wheel go through to the cells below.
 */
export function showCharts(
  session: Session,
  extrasOf: (unitId: string, sheetId: string) => SheetExtras | undefined,
): { redraw: () => void } {
  const { univerAPI } = session.engine;
  const layer = document.createElement("div");
  layer.className = "bench-charts";
  document.getElementById("grid")!.append(layer);
  let figures = new Map<string, HTMLElement>();
  let timer: ReturnType<typeof setTimeout> | undefined;

  const chartsOn = (sheet: FWorksheet): ChartRecord[] => extrasOf(session.unitId, sheet.getSheetId())?.charts ?? [];

  function inFront(): { sheet?: FWorksheet; charts: ChartRecord[] } {
    const sheet = univerAPI.getActiveWorkbook()?.getActiveSheet();
    return sheet === undefined ? { charts: [] } : { sheet, charts: chartsOn(sheet) };
  }

  const clear = (): void => {
    layer.replaceChildren();
    figures = new Map();
  };

  async function draw(): Promise<void> {
    if (inFront().charts.length === 0) return clear();
    // Loaded with the first chart: most starts can do without it.
    const { drawChart } = await import(/* webpackChunkName: "charts" */ "./draw-chart");
    // Asked again: while the script was loading, another sheet or workbook may have come in front.
    const { sheet, charts } = inFront();
    if (sheet === undefined || charts.length === 0) return clear();
    const view = viewOf(sheet);
    if (view === undefined) return redraw();
    figures = new Map(
      charts.map((chart) => [chart.id, drawChart(chart, chartSeries(session.engine, session.unitId, chart), placeOf(sheet, chart, view))]),
    );
    layer.replaceChildren(...figures.values());
    place();
  }

  /** Follows scrolling, zooming and changed widths without drawing again. */
  function place(): void {
    const sheet = univerAPI.getActiveWorkbook()?.getActiveSheet();
    if (figures.size === 0 || !sheet) return;
    const view = viewOf(sheet);
    if (!view) return;
    const { canvas, headings, zoom, scrolled, frozen } = view;
    const grid = layer.parentElement!.getBoundingClientRect();
    Object.assign(layer.style, {
      left: `${canvas.x - grid.x + headings.width}px`,
      top: `${canvas.y - grid.y + headings.height}px`,
      width: `${canvas.width - headings.width}px`,
      height: `${canvas.height - headings.height}px`,
    });
    for (const chart of chartsOn(sheet)) {
      const figure = figures.get(chart.id);
      if (!figure) continue;
      const { x, y, width, height, fixedX, fixedY } = placeOf(sheet, chart, view);
      const left = x * zoom - (fixedX ? 0 : scrolled.x);
      const top = y * zoom - (fixedY ? 0 : scrolled.y);
      // What scrolls disappears behind the frozen rows and columns.
      const hidden = { x: fixedX ? 0 : Math.max(0, frozen.width - left) / zoom, y: fixedY ? 0 : Math.max(0, frozen.height - top) / zoom };
      Object.assign(figure.style, {
        width: `${width}px`,
        height: `${height}px`,
        transform: `translate(${left}px, ${top}px) scale(${zoom})`,
        clipPath: `inset(${hidden.y}px 0 0 ${hidden.x}px)`,
      });
    }
  }

  function redraw(): void {
    clearTimeout(timer);
    timer = setTimeout(() => void draw(), settleMs);
  }

  univerAPI.addEvent(univerAPI.Event.Scroll, place);
  univerAPI.addEvent(univerAPI.Event.SheetZoomChanged, () => requestAnimationFrame(place));
  univerAPI.addEvent(univerAPI.Event.ActiveSheetChanged, () => {
    layer.replaceChildren();
    redraw();
  });
  new ResizeObserver(() => requestAnimationFrame(place)).observe(layer.parentElement!);
  session.onChanged(redraw);
  session.onOpened(redraw);
  return { redraw };
}
