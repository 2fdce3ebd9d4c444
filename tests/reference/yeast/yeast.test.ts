import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("yeast/yeast.csv", 45);
