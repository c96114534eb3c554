/** The two faces that a sheet is set in: TrueType files as bytes. */
export interface SheetFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** Where the package of fonts keeps them: resolve these as module paths and read the bytes. */
export const SHEET_FONT_FILES: Readonly<Record<keyof SheetFonts, string>> = {
  regular: "@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf",
  bold: "@expo-google-fonts/ibm-plex-sans/700Bold/IBMPlexSans_700Bold.ttf",
};

/**
 * Names inside those files. The PDF writer keeps opened fonts by these names, and its drawings ask
 * for a font by the name of its file: one name for both, and text in a drawing finds its font.
 */
export const POSTSCRIPT_NAMES: Readonly<Record<keyof SheetFonts, string>> = {
  regular: "IBMPlexSans-Regular",
  bold: "IBMPlexSans-Bold",
};
