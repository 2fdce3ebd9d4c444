import { DataValidationType, ICommandService, LifecycleService, LifecycleStages, type Injector } from "@univerjs/core";
import { DataValidatorRegistryService } from "@univerjs/data-validation";
import { DeviceInputEventType } from "@univerjs/engine-render";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { SetCellEditVisibleOperation, type IEditorBridgeServiceVisibleParam } from "@univerjs/sheets-ui";
import type { Engine } from "../../../excel-stand-in/engine/engine";
import type { KeyHandler } from "./keys-before-grid";

/** The grid's commands for its lists, by name since their package does not hand them out. */
const show = "sheet.operation.show-data-validation-dropdown";
const hide = "sheet.operation.hide-data-validation-dropdown";
const openList = (): HTMLElement | null => document.querySelector("[data-u-comp='sheets-dropdown-list']");
const itemsOf = (list: HTMLElement): HTMLElement[] => [...list.querySelectorAll<HTMLElement>(".univer-max-h-52 > div")];
const isPresent = (item: HTMLElement): boolean => item.querySelector("svg") !== null;
const marked = "data-marked";

/**
 * Cells with a list of choices, by the keyboard as in Excel: typing types, Alt with an arrow down or F4 opens the list,
 * arrows go through it, Enter takes. The grid opens its list as soon as somebody types there, moves the keyboard into a
 * search box after the first letters, and loses it when the list closes. Call it once a workbook is open.
 */
export function letListCellsBeTyped(engine: Engine, keys: { add(handler: KeyHandler): void }): void {
  const commands = engine.injector.get(ICommandService);
  const close = (): void => void commands.executeCommand(hide, {});
  commands.onCommandExecuted(({ id, params }) => {
    const typing = params as IEditorBridgeServiceVisibleParam | undefined;
    if (id === SetCellEditVisibleOperation.id && typing?.visible && typing.eventType === DeviceInputEventType.Keyboard) close();
  });
  // The grid draws cells with choices from its last stage but one on.
  void engine.injector
    .get(LifecycleService)
    .onStage(LifecycleStages.Steady)
    .then(() => openByArrowOnly(engine.injector));
  keys.add((event) => {
    if (engine.univerAPI.getActiveWorkbook()?.isCellEditing()) return false;
    const list = openList();
    return list === null ? opens(event) && openAtSelection(engine, commands) : goThrough(list, event.key, close);
  });
  // A click into the list would take the keyboard from the grid, and the grid empties the cell when its own value is chosen again.
  window.addEventListener(
    "mousedown",
    (event) => {
      if (inList(event.target)) event.preventDefault();
    },
    { capture: true },
  );
  window.addEventListener(
    "click",
    (event) => {
      const item = inList(event.target) && itemsOf(openList()!).find((one) => one.contains(event.target as Node));
      if (!item || !isPresent(item)) return;
      event.stopImmediatePropagation();
      close();
    },
    { capture: true },
  );
}

const inList = (target: EventTarget | null): boolean => target instanceof Node && openList()?.contains(target) === true;

const opens = ({ key, altKey, ctrlKey, metaKey, shiftKey }: KeyboardEvent): boolean =>
  !ctrlKey && !metaKey && !shiftKey && (altKey ? key === "ArrowDown" || key === "ArrowUp" : key === "F4");

function openAtSelection(engine: Engine, commands: ICommandService): boolean {
  const range = engine.univerAPI.getActiveWorkbook()?.getActiveSheet().getActiveRange();
  if (!range || !document.getElementById("grid")!.contains(document.activeElement)) return false;
  const place = { unitId: range.getUnitId(), subUnitId: range.getSheetId(), row: range.getRow(), column: range.getColumn() };
  const rule = engine.injector.get(SheetDataValidationModel).getRuleByLocation(place.unitId, place.subUnitId, place.row, place.column);
  if (rule?.type !== DataValidationType.LIST) return false;
  void commands.executeCommand(show, place);
  markPresent();
  return true;
}

/** The list is drawn some frames after the command. */
function markPresent(patience = 60): void {
  const items = itemsOf(openList() ?? document.createElement("div"));
  if (items.length > 0) mark(items, Math.max(0, items.findIndex(isPresent)));
  else if (patience > 0) requestAnimationFrame(() => markPresent(patience - 1));
}

function mark(items: readonly HTMLElement[], index: number): void {
  for (const [at, item] of items.entries()) item.toggleAttribute(marked, at === index);
  items[index]?.scrollIntoView({ block: "nearest" });
}

/** Whether the key was for the list. Any other one closes it and does what it does in the grid. */
function goThrough(list: HTMLElement, key: string, close: () => void): boolean {
  const items = itemsOf(list);
  const at = items.findIndex((item) => item.hasAttribute(marked));
  const last = items.length - 1;
  const goal = { ArrowDown: Math.min(last, at + 1), ArrowUp: Math.max(0, at - 1), Home: 0, End: last }[key];
  if (goal !== undefined) {
    mark(items, goal);
    return true;
  }
  if (["Shift", "Control", "Alt", "Meta"].includes(key)) return false;
  if ((key === "Enter" || key === "Tab") && at >= 0) items[at]!.click();
  else close();
  return key === "Enter" || key === "Escape" || key === "F4";
}

/** The grid takes a click anywhere on such a cell for one on its arrow. */
function openByArrowOnly(injector: Injector): void {
  interface Widget {
    isHit(position: { x: number; y: number }, info: CellInfo): boolean;
    _ensureMap(sheetId: string): Map<string, { left: number; width: number }>;
  }
  interface CellInfo {
    subUnitId: string;
    row: number;
    col: number;
  }
  const widget = injector.get(DataValidatorRegistryService).getValidatorItem(DataValidationType.LIST)?.canvasRender as unknown as
    Widget | undefined;
  if (!widget?._ensureMap) throw new Error("The grid's cells with choices have changed: they cannot be repaired.");
  const isHit = widget.isHit.bind(widget);
  widget.isHit = (position, info) => {
    const drawn = widget._ensureMap(info.subUnitId).get(`${info.row}.${info.col}`);
    return isHit(position, info) && drawn !== undefined && position.x >= drawn.left + drawn.width - arrowWidth;
  };
}

const arrowWidth = 20;
