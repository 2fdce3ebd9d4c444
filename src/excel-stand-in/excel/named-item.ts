import {
  IDefinedNamesService,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
  type IDefinedNamesServiceParam,
} from "@univerjs/engine-formula";
import { ICommandService, IUndoRedoService } from "@univerjs/core";
import { scopeOf } from "../engine/name-scope";
import { readCells, splitAddress, type Block } from "./address";
import type { SheetBlock } from "./cell-writer";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { Host } from "./host";
import { Range } from "./range";
import type { StandsFor } from "./standing";

type GridName = IDefinedNamesServiceParam;

/** Stands in for Excel.NamedItem; what it stands for is the grid's id of the name. */
export class NamedItem extends ClientObject<string, Context> implements StandsFor<Excel.NamedItem, keyof NamedItem> {
  declare readonly name: string;
  declare readonly value: Excel.NamedItem["value"];
  declare readonly type: Excel.NamedItem["type"];
  declare readonly scope: Excel.NamedItem["scope"];
  declare formula: Excel.NamedItem["formula"];
  declare visible: boolean;
  declare comment: string;

  getRange(): Range {
    return this.range("throws");
  }

  delete(): void {
    this.remove(() => {
      changeName(this.context.host, this.grid(), undefined);
    });
  }

  protected override changes() {
    return {
      formula: (formula: string) => this.change("formula", formula, { formulaOrRefString: gridFormula(formula) }),
      visible: (visible: boolean) => this.change("visible", visible, { hidden: !visible }),
      comment: (comment: string) => this.change("comment", comment, { comment }),
    };
  }

  protected override readers() {
    const { host } = this.context;
    return {
      name: () => this.grid().name,
      formula: () => `=${this.grid().formulaOrRefString.replace(/^=/u, "")}`,
      visible: () => !this.grid().hidden,
      comment: () => this.grid().comment ?? "",
      scope: () => (scopeOf(this.grid()) ? "Worksheet" : "Workbook"),
      type: () => (blockOf(host, this.grid()) ? "Range" : constant(this.grid()).type),
      value: () => (blockOf(host, this.grid()) ? this.grid().formulaOrRefString : constant(this.grid()).value),
    };
  }

  private range(missing: "throws" | "null"): Range {
    return new Range(this.context, {
      name: "range",
      missing,
      find: () => (this.isNullObject ? undefined : blockOf(this.context.host, this.grid())),
    });
  }

  private grid(): GridName {
    return this.context.host.engine.injector.get(IDefinedNamesService).getValueById(this.context.host.unitId, this.target)!;
  }

  private change(property: string, value: unknown, part: Partial<GridName>): void {
    this.set(property, value, () => changeName(this.context.host, this.grid(), { ...this.grid(), ...part }));
  }
}

/** Sets or removes a name as one undoable step. */
export function changeName(host: Host, before: GridName | undefined, after: GridName | undefined): void {
  const { unitId } = host;
  const set = (name: GridName) => ({ id: SetDefinedNameMutation.id, params: { ...name, unitId } });
  const remove = (name: GridName) => ({ id: RemoveDefinedNameMutation.id, params: { ...name, unitId } });
  const redo = after ? set(after) : remove(before!);
  const undo = before ? set(before) : remove(after!);
  host.engine.injector.get(ICommandService).syncExecuteCommand(redo.id, redo.params);
  host.engine.injector.get(IUndoRedoService).pushUndoRedo({ unitID: unitId, redoMutations: [redo], undoMutations: [undo] });
}

/** The grid stores plain references without an equals sign, everything else with one. */
export function gridFormula(formula: string): string {
  const text = formula.replace(/^=/u, "");
  const reference = /^(?:(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/iu;
  return reference.test(text) ? text : `=${text}`;
}

export function blockOf(host: Host, name: GridName): SheetBlock | undefined {
  if (name.formulaOrRefString.startsWith("=")) return undefined;
  const { sheetName, cells } = splitAddress(name.formulaOrRefString);
  const sheet = sheetName === undefined ? host.workbook.getActiveSheet() : host.workbook.getSheetByName(sheetName);
  const block = sheet && readCells(cells, { rowCount: sheet.getMaxRows(), columnCount: sheet.getMaxColumns() });
  return block ? { ...block, sheetId: sheet.getSheetId() } : undefined;
}

/** The cells of a name as seen from a sheet, for getRange("og"); only when it lies on that sheet, as in Excel. */
export function nameRange(host: Host, sheetId: string, name: string): Block | undefined {
  const found = host.engine.names.find(host.unitId, sheetId, name);
  const block = found && blockOf(host, found);
  return block?.sheetId === sheetId ? block : undefined;
}

function constant(name: GridName): { type: string; value: string | number | boolean } {
  const text = name.formulaOrRefString.replace(/^=/u, "");
  if (/^".*"$/su.test(text)) return { type: "String", value: text.slice(1, -1).replaceAll('""', '"') };
  if (/^(?:TRUE|FALSE)$/iu.test(text)) return { type: "Boolean", value: /^TRUE$/iu.test(text) };
  if (text !== "" && Number.isFinite(Number(text)))
    return { type: Number.isInteger(Number(text)) ? "Integer" : "Double", value: Number(text) };
  return { type: /#(?:REF|NAME)/u.test(text) ? "Error" : "String", value: text };
}
