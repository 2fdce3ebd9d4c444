import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("beer/alcohol.csv", 2);
