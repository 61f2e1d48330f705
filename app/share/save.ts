/** Hands a file to the person, into the folder for downloads. */
export function saveBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name.replace(/[^\p{L}\p{N}._-]+/gu, "-");
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
