import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("log/steady.csv", 12);
checkReferenceTable("log/curve.csv", 14);
