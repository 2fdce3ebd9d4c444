/** Batch sheets of an older Gylebook, brought to today's plan on request. */
export { migrateSheets, type MigratedSheet, type MigrationReport } from "./migrate";
export { readOutlook, type SheetOutlook } from "./outlook";
