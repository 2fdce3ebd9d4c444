import { freeName, InsertionRefused, insertSheet } from "../../grid/write/insert-sheet";
import { batchesInWorkbook } from "../batches-in-workbook";
import { planRecipe } from "./recipe-plan";

/**
 * Puts the page of a batch on a sheet of its own, read from the batch as it stands now: all of it or nothing.
 *
 * @returns the page's name, which is free in this workbook
 * @throws InsertionRefused when the batch is gone
 */
export async function insertRecipe(context: Excel.RequestContext, sheetName: string): Promise<string> {
  const { batches, sheetNames } = await batchesInWorkbook(context);
  const batch = batches.find((other) => other.sheetName === sheetName);
  if (!batch) throw new InsertionRefused(`There is no batch sheet “${sheetName}” any more.`);
  const pageName = freeName(sheetNames, `${sheetName.slice(0, 24)} recipe`);
  await insertSheet(context, planRecipe(batch, pageName), "A1");
  return pageName;
}
