import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("mash/acidity.csv", 19);
checkReferenceTable("mash/running-off.csv", 13);
