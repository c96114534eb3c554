const two = (value: number) => String(Math.abs(value)).padStart(2, "0");

/**
 * ISO 8601 with the offset of the place: the day and the hour read as on the clock of who
 * measured, and scripts still know the instant.
 */
export function localTime(now: Date): string {
  const offset = -now.getTimezoneOffset();
  const sign = offset < 0 ? "-" : "+";
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  const time = `${two(now.getHours())}:${two(now.getMinutes())}:${two(now.getSeconds())}`;
  const zone = `${sign}${two(Math.trunc(offset / 60))}:${two(offset % 60)}`;
  return `${day}T${time}${zone}`;
}
