import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("heat/heat.csv", 14);
