import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("water/boils.csv", 13);
checkReferenceTable("water/ions.csv", 14);
checkReferenceTable("water/mash.csv", 8);
checkReferenceTable("water/treatment.csv", 4);

checkReferenceTable("water/nearest.csv", 8);
checkReferenceTable("water/reports.csv", 12);
