import { generateRandomId } from "@univerjs/core";
import type { IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import { WORKBOOK_SCOPE } from "../engine/name-scope";
import { readCells } from "./address";
import { ClientCollection } from "./collection";
import type { Context } from "./context";
import { invalidArgument, RichApiError } from "./errors";
import { changeName, gridFormula, NamedItem } from "./named-item";
import { Range } from "./range";
import type { StandsFor } from "./standing";

export interface Scope {
  sheetId: string | undefined;
}

/** Stands in for Excel.NamedItemCollection: a sheet's own names, or the workbook's. */
export class NamedItemCollection
  extends ClientCollection<NamedItem, Scope, Context>
  implements StandsFor<Excel.NamedItemCollection, keyof NamedItemCollection>
{
  add(name: string, reference: Range | Excel.Range | string, comment?: string): NamedItem {
    const id = generateRandomId();
    this.write(({ sheetId }) => {
      if (!isValidName(name)) throw invalidArgument(`"${name}" cannot be a name.`);
      if (this.find(name)) throw new RichApiError("ItemAlreadyExists", `The name "${name}" exists already.`);
      const formulaOrRefString = reference instanceof Range ? reference.absoluteAddress() : gridFormula(reference as string);
      changeName(this.context.host, undefined, {
        id,
        name,
        formulaOrRefString,
        localSheetId: sheetId ?? WORKBOOK_SCOPE,
        ...(comment === undefined ? {} : { comment }),
      });
    });
    return this.standIn(() => id, "throws");
  }

  getItem(name: string): NamedItem {
    return this.standIn(() => this.find(name)?.id, "throws");
  }
  getItemOrNullObject(name: string): NamedItem {
    return this.standIn(() => (this.isNullObject ? undefined : this.find(name)?.id), "null");
  }

  protected list(): NamedItem[] {
    return this.all().map(({ id }) => this.standIn(() => id, "throws"));
  }

  private all(): IDefinedNamesServiceParam[] {
    const { host } = this.context;
    this.assertInFront();
    const scopes = this.target.sheetId !== undefined && host.switches.workbookNamesOnSheets ? [undefined] : [];
    return [this.target.sheetId, ...scopes]
      .flatMap((scope) => host.engine.names.listIn(host.unitId, scope))
      .sort((a, b) => a.name.localeCompare(b.name));
  }

  private find(name: string): IDefinedNamesServiceParam | undefined {
    const { host } = this.context;
    this.assertInFront();
    return host.engine.names.findIn(host.unitId, this.target.sheetId, name);
  }

  private assertInFront(): void {
    if (this.target.sheetId !== undefined && this.context.host.switches.otherWorkbookInFront)
      throw new RichApiError("InvalidSelection", "The current selection is invalid for this operation.");
  }

  private standIn(find: () => string | undefined, missing: "throws" | "null"): NamedItem {
    return new NamedItem(this.context, { name: "namedItem", missing, find });
  }
}

/** Excel refuses names that read as a cell, such as OG1, and R and C. */
const isValidName = (name: string): boolean =>
  /^[\p{L}_\\][\p{L}\p{N}_.\\?]{0,254}$/u.test(name) &&
  !/^[rc]$/iu.test(name) &&
  !/^r\d*c\d*$/iu.test(name) &&
  !readCells(name, { rowCount: 1_048_576, columnCount: 16_384 });
