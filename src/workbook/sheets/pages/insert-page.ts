import { freeName, InsertionRefused, insertSheet } from "../../grid/write/insert-sheet";
import { shortened } from "../../grid/words/shortened";
import { batchesInWorkbook } from "../batches-in-workbook";
import { planLabels } from "./labels-plan";
import { planLesson } from "./lesson-plan";
import { planRecipe } from "./recipe-plan";
import { planShopping } from "./shopping-plan";

/** The pages that a batch can have, each on a sheet of its own that follows the batch sheet. */
const plans = { recipe: planRecipe, shopping: planShopping, lesson: planLesson, labels: planLabels } as const;
export type PageKind = keyof typeof plans;
export const pageKinds = Object.keys(plans) as readonly PageKind[];

/**
 * Puts a page of a batch on a sheet of its own, read from the batch as it stands now: all of it or nothing.
 *
 * @returns the page's name, which is free in this workbook
 * @throws InsertionRefused when the batch is gone
 */
export async function insertPage(context: Excel.RequestContext, sheetName: string, kind: PageKind): Promise<string> {
  const { batches, sheetNames } = await batchesInWorkbook(context);
  const batch = batches.find((other) => other.sheetName === sheetName);
  if (!batch) throw new InsertionRefused(`There is no batch sheet “${sheetName}” any more.`);
  const pageName = freeName(sheetNames, shortened(sheetName, ` ${kind}`));
  await insertSheet(context, plans[kind](batch, pageName), "A1");
  return pageName;
}
