import { checkReferenceTable } from "../../support/reference-table";

checkReferenceTable("hops/bitterness.csv", 11);
checkReferenceTable("hops/kinetic.csv", 14);
checkReferenceTable("hops/storage.csv", 7);
checkReferenceTable("hops/utilisation.csv", 22);
