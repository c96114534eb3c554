/** The first `count` primes. */
function primes(count: number): number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) {
    if (found.every((prime) => n % prime !== 0)) found.push(n);
  }
  return found;
}

/** The first 32 bits of the fraction of x, as FIPS 180-4 derives its constants. */
const fraction = (x: number) => Math.floor((x - Math.floor(x)) * 2 ** 32) | 0;

const ROUND = Int32Array.from(primes(64), (prime) => fraction(Math.cbrt(prime)));
const START = Int32Array.from(primes(8), (prime) => fraction(Math.sqrt(prime)));

const turn = (x: number, by: number) => (x >>> by) | (x << (32 - by));

/** The message, a one bit, zeros and the length in bits, to whole blocks of 64 bytes. */
function lastBlocks(bytes: Uint8Array): Uint8Array {
  const rest = bytes.length % 64;
  const tail = new Uint8Array(rest < 56 ? 64 : 128);
  tail.set(bytes.subarray(bytes.length - rest));
  tail[rest] = 0x80;
  const view = new DataView(tail.buffer);
  view.setUint32(tail.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(tail.length - 4, (bytes.length << 3) >>> 0);
  return tail;
}

function mixBlock(state: Int32Array, words: Int32Array, view: DataView, offset: number) {
  const w = (n: number) => words[n] ?? 0;
  for (let n = 0; n < 16; n++) words[n] = view.getInt32(offset + 4 * n);
  for (let n = 16; n < 64; n++) {
    const near = w(n - 2);
    const far = w(n - 15);
    const s0 = turn(far, 7) ^ turn(far, 18) ^ (far >>> 3);
    const s1 = turn(near, 17) ^ turn(near, 19) ^ (near >>> 10);
    words[n] = (w(n - 16) + s0 + w(n - 7) + s1) | 0;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let n = 0; n < 64; n++) {
    const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const one = (h + s1 + ((e & f) ^ (~e & g)) + (ROUND[n] ?? 0) + w(n)) | 0;
    const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const two = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + one) | 0;
    d = c;
    c = b;
    b = a;
    a = (one + two) | 0;
  }
  for (const [n, value] of [a, b, c, d, e, f, g, h].entries()) {
    state[n] = ((state[n] ?? 0) + value) | 0;
  }
}

/**
 * SHA-256 (FIPS 180-4) in lower-case hex. Our own because browsers offer theirs only to pages on
 * https or localhost, and a tablet may reach a workshop's computer by its plain address.
 */
export function sha256(bytes: Uint8Array): string {
  const state = START.slice();
  const words = new Int32Array(64);
  const whole = bytes.length - (bytes.length % 64);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let offset = 0; offset < whole; offset += 64) mixBlock(state, words, view, offset);
  const tail = lastBlocks(bytes);
  const tailView = new DataView(tail.buffer);
  for (let offset = 0; offset < tail.length; offset += 64) mixBlock(state, words, tailView, offset);
  return [...state].map((word) => (word >>> 0).toString(16).padStart(8, "0")).join("");
}
