import { generateRandomId, ICommandService, IUndoRedoService } from "@univerjs/core";
import { RemoveNoteMutation, SheetsNoteModel, SheetUpdateNoteCommand, UpdateNoteMutation, type ISheetNote } from "@univerjs/sheets-note";
import { cellsText, sheetPrefix } from "./address";
import { assertFormatsOpen } from "./cell-writer";
import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { RichApiError } from "./errors";
import type { Scope } from "./named-items";
import { Range } from "./range";
import { scopedBlock } from "./scoped-block";
import type { StandsFor } from "./standing";

interface NotePlace {
  sheetId: string;
  note: ISheetNote;
}

/** Stands in for Excel.NoteCollection of a sheet or of the workbook. */
export class NoteCollection
  extends ClientCollection<Note, Scope, Context>
  implements StandsFor<Excel.NoteCollection, keyof NoteCollection>
{
  add(cell: Range | Excel.Range | string, content: string): Note {
    const id = generateRandomId();
    let sheetId = "";
    this.write(() => {
      const block = scopedBlock(this.context.host, this.target, cell as Range | string);
      assertFormatsOpen(this.context.host, block);
      sheetId = block.sheetId;
      if (notesOf(this.context, sheetId).some((note) => note.row === block.row && note.col === block.column)) {
        throw new RichApiError("ItemAlreadyExists", "The cell has a note already.");
      }
      const note: ISheetNote = { id, row: block.row, col: block.column, note: content, width: 220, height: 90, show: false };
      this.context.host.command(SheetUpdateNoteCommand.id, { subUnitId: sheetId, row: block.row, col: block.column, note });
    });
    return this.standIn(() => noteById(this.context, sheetId, id), "throws");
  }

  getItem(cell: string | Range): Note {
    return this.standIn(() => this.find(cell), "throws");
  }
  getItemOrNullObject(cell: string | Range): Note {
    return this.standIn(() => (this.isNullObject ? undefined : this.find(cell)), "null");
  }

  protected list(): Note[] {
    const { host } = this.context;
    const sheetIds =
      this.target.sheetId === undefined ? host.workbook.getSheets().map((sheet) => sheet.getSheetId()) : [this.target.sheetId];
    return sheetIds.flatMap((sheetId) => notesOf(this.context, sheetId).map((note) => this.standIn(() => ({ sheetId, note }), "throws")));
  }

  private find(cell: string | Range): NotePlace | undefined {
    const { sheetId, row, column } = scopedBlock(this.context.host, this.target, cell);
    const note = notesOf(this.context, sheetId).find((one) => one.row === row && one.col === column);
    return note && { sheetId, note };
  }

  private standIn(find: () => NotePlace | undefined, missing: "throws" | "null"): Note {
    return new Note(this.context, { name: "note", missing, find });
  }
}

/** Stands in for Excel.Note. */
export class Note extends ClientObject<NotePlace, Context> implements StandsFor<Excel.Note, keyof Note> {
  declare content: string;

  /** The grid's own command deletes the note of the selected cell, whatever it is asked for: hence its parts. */
  delete(): void {
    this.remove(({ sheetId, note }) => {
      const {
        unitId,
        engine: { injector },
      } = this.context.host;
      const remove = { id: RemoveNoteMutation.id, params: { unitId, sheetId, noteId: note.id } };
      const putBack = { id: UpdateNoteMutation.id, params: { unitId, sheetId, row: note.row, col: note.col, note: { ...note } } };
      injector.get(ICommandService).syncExecuteCommand(remove.id, remove.params);
      injector.get(IUndoRedoService).pushUndoRedo({ unitID: unitId, redoMutations: [remove], undoMutations: [putBack] });
    });
  }

  getLocation(): Range {
    return new Range(this.context, {
      name: "range",
      missing: "throws",
      find: () => {
        const { sheetId, note } = this.target;
        return { sheetId, row: note.row, column: note.col, rowCount: 1, columnCount: 1 };
      },
    });
  }

  protected override changes() {
    return {
      content: (content: string) =>
        this.set("content", content, ({ sheetId, note }) => {
          const changed = { ...note, note: content };
          this.context.host.command(SheetUpdateNoteCommand.id, { subUnitId: sheetId, row: note.row, col: note.col, note: changed });
          this.target.note = changed;
        }),
    };
  }

  protected override readers() {
    const place = ({ sheetId, note }: NotePlace) => {
      const cells = cellsText({ row: note.row, column: note.col, rowCount: 1, columnCount: 1 });
      return sheetPrefix(this.context.host.sheet(sheetId).getSheetName()) + cells;
    };
    return { content: ({ note }: NotePlace) => note.note, address: place };
  }
}

const notesOf = (context: Context, sheetId: string): ISheetNote[] => {
  const found = context.host.engine.injector.get(SheetsNoteModel).getSheetNotes(context.host.unitId, sheetId);
  return found ? [...found.values()] : [];
};

function noteById(context: Context, sheetId: string, id: string): NotePlace | undefined {
  const note = notesOf(context, sheetId).find((one) => one.id === id);
  return note && { sheetId, note };
}
