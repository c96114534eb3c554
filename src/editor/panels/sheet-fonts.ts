import regularUrl from "@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf?url";
import boldUrl from "@expo-google-fonts/ibm-plex-sans/700Bold/IBMPlexSans_700Bold.ttf?url";
import type { SheetFonts } from "../../sheet/index.ts";

let loading: Promise<SheetFonts> | null = null;

/** The sheet's fonts, fetched once from where the program itself came from. */
export function sheetFonts(): Promise<SheetFonts> {
  loading ??= load().catch((error: unknown) => {
    // A failed try must not stand for all later ones.
    loading = null;
    throw error;
  });
  return loading;
}

async function load(): Promise<SheetFonts> {
  const [regular, bold] = await Promise.all([regularUrl, boldUrl].map(fetchBytes));
  if (!regular || !bold) throw new Error("a font of the sheet is missing");
  return { regular, bold };
}

async function fetchBytes(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`a font of the sheet can't be loaded (${response.status})`);
  return new Uint8Array(await response.arrayBuffer());
}
