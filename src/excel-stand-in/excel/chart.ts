import { ChartAxes } from "./chart-axes";
import { ChartFont, ChartLegend, ChartTitle } from "./chart-parts";
import { ChartSeriesCollection } from "./chart-series";
import { cellsText, parseCells, type Block } from "./address";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { itemNotFound } from "./errors";
import { Range } from "./range";
import { POINTS_PER_PIXEL } from "./range-format";
import type { ChartRecord } from "./sheet-extras";
import type { StandsFor } from "./standing";

export interface ChartTarget {
  sheetId: string;
  id: string;
}

/** Stands in for Excel.Chart. Positions are in points. */
export class Chart extends ClientObject<ChartTarget, Context> implements StandsFor<Excel.Chart, keyof Chart> {
  readonly title = new ChartTitle(this);
  readonly legend = new ChartLegend(this);
  readonly axes = new ChartAxes(this);
  readonly format = { font: new ChartFont(this, "fontSize") };

  get series(): ChartSeriesCollection {
    return this.part("series", () => new ChartSeriesCollection(this));
  }
  declare name: string;
  declare chartType: Excel.Chart["chartType"];
  declare left: number;
  declare top: number;
  declare width: number;
  declare height: number;

  /** Lays the chart over the cells from the first to the last, both included. */
  setPosition(startCell: Range | Excel.Range | string, endCell?: Range | Excel.Range | string): void {
    this.write(({ sheetId }) => {
      const [start, end] = [startCell, endCell].map((cell) => cell && this.blockFor(sheetId, cell as Range | string)) as [
        Block,
        Block | undefined,
      ];
      this.update((chart) => {
        const from = this.corner(sheetId, start.row, start.column);
        const to = end && this.corner(sheetId, end.row + end.rowCount, end.column + end.columnCount);
        chart.position = { ...chart.position, ...from, ...(to ? { width: to.left - from.left, height: to.top - from.top } : {}) };
        chart.anchor = { startCell: cellsText(start), ...(end ? { endCell: cellsText(end) } : {}) };
      });
    });
  }

  delete(): void {
    this.remove(({ sheetId, id }) =>
      this.context.host.extras.update(this.context.host.unitId, sheetId, (extras) => {
        extras.charts = extras.charts?.filter((chart) => chart.id !== id) ?? [];
      }),
    );
  }

  /** The chart's record; only while the queue is worked off. */
  record(): ChartRecord {
    const { sheetId, id } = this.target;
    const record = this.context.host.extras.ofSheet(this.context.host.unitId, sheetId).charts?.find((chart) => chart.id === id);
    if (!record) throw itemNotFound("chart");
    return record;
  }

  update(change: (chart: ChartRecord) => void): void {
    const record = this.record();
    this.context.host.extras.update(this.context.host.unitId, this.target.sheetId, () => change(record));
  }

  protected override children() {
    return { title: () => this.title, legend: () => this.legend, series: () => this.series };
  }

  protected override changes() {
    return {
      name: (name: string) =>
        this.set("name", name, () =>
          this.update((chart) => {
            chart.name = name;
          }),
        ),
      chartType: (type: Excel.Chart["chartType"]) =>
        this.set("chartType", type, () =>
          this.update((chart) => {
            chart.type = type;
          }),
        ),
      left: (points: number) => this.place("left", points),
      top: (points: number) => this.place("top", points),
      width: (points: number) => this.place("width", points),
      height: (points: number) => this.place("height", points),
    };
  }

  protected override readers() {
    const position = (side: keyof ChartRecord["position"]) => () => this.record().position[side];
    return {
      name: () => this.record().name,
      chartType: () => this.record().type,
      left: position("left"),
      top: position("top"),
      width: position("width"),
      height: position("height"),
    };
  }

  private place(side: keyof ChartRecord["position"], points: number): void {
    this.set(side, points, () =>
      this.update((chart) => {
        chart.position[side] = points;
        delete chart.anchor;
      }),
    );
  }

  private blockFor(sheetId: string, cell: Range | string): Block {
    if (cell instanceof Range) return cell.target;
    const sheet = this.context.host.sheet(sheetId);
    return parseCells(cell.slice(cell.lastIndexOf("!") + 1), { rowCount: sheet.getMaxRows(), columnCount: sheet.getMaxColumns() });
  }

  /** Where a cell's top left corner is, in points. */
  private corner(sheetId: string, row: number, column: number): { left: number; top: number } {
    const sheet = this.context.host.gridSheet(sheetId);
    let [left, top] = [0, 0];
    for (let index = 0; index < column; index++) left += sheet.getColumnWidth(index);
    for (let index = 0; index < row; index++) top += sheet.getRowHeight(index);
    return { left: left * POINTS_PER_PIXEL, top: top * POINTS_PER_PIXEL };
  }
}
