import type { AnyDescriptor } from "../describe";
import { tasteAgree } from "./agree";
import { tasteDuo } from "./duo";
import { tastePair } from "./pair";
import { tasteTriangle } from "./triangle";

export const tasteFunctions: readonly AnyDescriptor[] = [tasteTriangle, tasteDuo, tastePair, tasteAgree];
