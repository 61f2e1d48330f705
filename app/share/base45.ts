/*
 * Bytes as the 45 characters that QR codes hold most densely (RFC 9285): 3 characters for 2 bytes, so that a code carries
 * hardly more than the bytes themselves, and readers hand on plain text, not bytes that they may mistake for some other
 * writing.
 */

const CHARACTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

export function toBase45(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 2) {
    const isPair = i + 1 < bytes.length;
    let value = isPair ? bytes[i]! * 256 + bytes[i + 1]! : bytes[i]!;
    for (let n = isPair ? 3 : 2; n > 0; n--) {
      text += CHARACTERS[value % 45]!;
      value = Math.floor(value / 45);
    }
  }
  return text;
}

/** null: that is no such text. */
export function fromBase45(text: string): Uint8Array<ArrayBuffer> | null {
  if (text.length % 3 === 1) return null;
  const bytes: number[] = [];
  for (let i = 0; i < text.length; i += 3) {
    const digits = [...text.slice(i, i + 3)].map((one) => CHARACTERS.indexOf(one));
    const value = digits.reduceRight((sum, digit) => sum * 45 + digit, 0);
    if (digits.includes(-1) || value >= (digits.length === 3 ? 65_536 : 256)) return null;
    if (digits.length === 3) bytes.push(value >> 8);
    bytes.push(value & 255);
  }
  return new Uint8Array(bytes);
}
