import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("taste/forced-choice.csv", 142);
checkReferenceTable("taste/agreement.csv", 8);
