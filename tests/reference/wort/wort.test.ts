import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("wort/gravity-scales.csv", 45);
checkReferenceTable("wort/hydrometer.csv", 26);
checkReferenceTable("wort/malt-bill.csv", 49);
checkReferenceTable("wort/colour.csv", 11);
checkReferenceTable("wort/mass-balance.csv", 26);
