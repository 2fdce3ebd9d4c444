import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("clean/dose.csv", 3);
