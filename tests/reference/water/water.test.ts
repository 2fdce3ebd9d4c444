import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("water/boils.csv", 13);
