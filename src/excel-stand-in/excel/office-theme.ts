/** The colours that Office tells a pane of, and whether they are dark. */
export interface OfficeTheme {
  bodyBackgroundColor: string;
  bodyForegroundColor: string;
  isDarkTheme: boolean;
}

export const lightTheme: OfficeTheme = {
  bodyBackgroundColor: "#FFFFFF",
  bodyForegroundColor: "#1F1F1F",
  isDarkTheme: false,
};

export const darkTheme: OfficeTheme = {
  bodyBackgroundColor: "#262626",
  bodyForegroundColor: "#F0F0F0",
  isDarkTheme: true,
};

/** White on black and nothing between, as under a contrast theme of the system. */
export const contrastTheme: OfficeTheme = {
  bodyBackgroundColor: "#000000",
  bodyForegroundColor: "#FFFFFF",
  isDarkTheme: true,
};
