/** How the page looks is remembered in the browser's local storage. A browser that blocks it has no memory: no reason to stop. */
export function recall(key: string): string | undefined {
  try {
    return localStorage.getItem(key) ?? undefined;
  } catch {
    return undefined;
  }
}

export function remember(key: string, text: string): void {
  try {
    localStorage.setItem(key, text);
  } catch {
    // As said above.
  }
}
