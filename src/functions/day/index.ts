import type { AnyDescriptor } from "../describe";
import { dayTimeline } from "./timeline";

export const dayFunctions: readonly AnyDescriptor[] = [dayTimeline];
