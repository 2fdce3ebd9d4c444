import { createContext } from "preact";
import { useContext } from "preact/hooks";

/** Opens a screen by its title; the pane provides it. */
export const OpenScreen = createContext<(title: string) => void>(() => undefined);

/** For a button that leads to what comes next. */
export const useOpenScreen = (): ((title: string) => void) => useContext(OpenScreen);
