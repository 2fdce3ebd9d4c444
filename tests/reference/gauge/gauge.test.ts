import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("gauge/spread.csv", 6);
