import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("pack/carbonation.csv", 43);
checkReferenceTable("pack/priming.csv", 6);
checkReferenceTable("pack/bottling.csv", 7);
checkReferenceTable("pack/line-dose.csv", 9);
