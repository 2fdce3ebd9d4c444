import type { AnyDescriptor } from "../describe";
import { mashAcidity } from "./acidity";
import { mashBoiled } from "./boiled";
import { mashCorrect } from "./correct";
import { mashRoom } from "./room";
import { mashRunnings } from "./runnings";

export const mashFunctions: readonly AnyDescriptor[] = [mashRoom, mashAcidity, mashCorrect, mashRunnings, mashBoiled];
