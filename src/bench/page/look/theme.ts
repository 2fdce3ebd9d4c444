import { defaultTheme } from "@univerjs/themes";

type Theme = typeof defaultTheme;

/** The grid's own theme with our accent for its blue, and greys warmed towards the paper of the page around it. */
export const benchTheme: Theme = {
  ...defaultTheme,
  primary: {
    50: "#f0f5f2",
    100: "#dfe9e2",
    200: "#bcd3ca",
    300: "#93b8ae",
    400: "#4f8a82",
    500: "#2a6b65",
    600: "#1f5150",
    700: "#124642",
    800: "#0e3b38",
    900: "#0a2e2b",
  },
  gray: {
    50: "#faf8f1",
    100: "#f4f0e4",
    200: "#e0dac8",
    300: "#b9b29c",
    400: "#6b6657",
    500: "#585548",
    600: "#3a3a31",
    700: "#2b2d27",
    800: "#22251f",
    900: "#1b1d19",
  },
};
