import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("water/boils.csv", 13);
checkReferenceTable("water/ions.csv", 11);
checkReferenceTable("water/mash.csv", 4);
checkReferenceTable("water/treatment.csv", 4);
