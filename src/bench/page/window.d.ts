import type { BenchHandle } from "./handle";

declare global {
  interface Window {
    gylebookBench: BenchHandle;
  }
}
