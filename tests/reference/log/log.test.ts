import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("log/steady.csv", 7);
checkReferenceTable("log/curve.csv", 10);
