/**
 * What to tell of a picture too rough to tell its lines: a sentence. `places`: how many of it are asked about;
 * null where so much is open that nothing is asked (`Traced.isTooRough`).
 */
export function roughPictureWords(places: number | null): string {
  const how = places === null ? ", so few are joined and nothing is asked" : ` at ${places} places`;
  return `This picture is too rough to tell its lines${how}: take it again nearer, square on and in more light, or scan it at 300 dpi.`;
}
