import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("pack/carbonation.csv", 40);
checkReferenceTable("pack/priming.csv", 6);
checkReferenceTable("pack/bottling.csv", 8);
checkReferenceTable("pack/line-dose.csv", 9);
checkReferenceTable("pack/inside.csv", 6);
