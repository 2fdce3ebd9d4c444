import type { AnyDescriptor } from "../describe";
import { cleanDose } from "./dose";

export const cleanFunctions: readonly AnyDescriptor[] = [cleanDose];
