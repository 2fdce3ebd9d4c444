import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("beer/alcohol.csv", 41);
checkReferenceTable("beer/extract-energy.csv", 26);
checkReferenceTable("beer/colour.csv", 29);
checkReferenceTable("beer/styles.csv", 102);
checkReferenceTable("beer/style-cards.csv", 6);
