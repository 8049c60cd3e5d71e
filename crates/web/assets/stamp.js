// What the phone adds to an entry: its id and its times.

// RFC 9562 version 7: the time in the first 48 bits, so that ids sort by when they were made.
// getRandomValues, not randomUUID: the latter is missing on plain http.
export function entryId(now = Date.now()) {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  for (let i = 0; i < 6; i += 1) bytes[i] = Math.floor(now / 256 ** (5 - i)) % 256;
  bytes[6] = 0x70 | (bytes[6] & 0x0f);
  bytes[8] = 0x80 | (bytes[8] & 0x3f);
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

// Local date and time with its UTC offset, as 2026-11-25T13:05:00-06:00. Where the clock of the pages
// stands still, as on the demo slab, what is written there happened at that moment too.
export function localTime(date = new Date()) {
  const stands = typeof document === "undefined" ? "" : document.body.dataset.fixed;
  if (stands) return stands;
  const two = (number) => String(Math.floor(Math.abs(number))).padStart(2, "0");
  const east = -date.getTimezoneOffset();
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  const time = `${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`;
  return `${day}T${time}${east < 0 ? "-" : "+"}${two(east / 60)}:${two(east % 60)}`;
}
