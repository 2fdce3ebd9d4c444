/** For `ref`: what answers a press comes into sight when it appears, below whatever button was pressed. */
export const intoSight = (element: HTMLElement | null): void => element?.scrollIntoView({ block: "nearest" });
