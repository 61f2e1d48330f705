/** The browser's own reader of codes, where it has one. */
interface Detector {
  detect(image: ImageBitmapSource): Promise<{ rawValue: string }[]>;
}
interface DetectorKind {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<string[]>;
}

/** Reads the codes in an image. */
export type CodeReader = (image: ImageData) => Promise<string[]>;

/** The browser's own reader, or else one in script. */
export async function codeReader(): Promise<CodeReader> {
  const own = (globalThis as { BarcodeDetector?: DetectorKind }).BarcodeDetector;
  const formats = (await own?.getSupportedFormats().catch(() => [])) ?? [];
  if (own !== undefined && formats.includes("qr_code")) {
    const detector = new own({ formats: ["qr_code"] });
    return async (image) => (await detector.detect(image)).map(({ rawValue }) => rawValue);
  }
  const { decodeQR } = await import("qr/decode.js");
  return async (image) => {
    try {
      return [decodeQR(image)];
    } catch {
      // There is none in it, or it cannot be made out.
      return [];
    }
  };
}

interface Source {
  image: CanvasImageSource;
  width: number;
  height: number;
}

/** What a picture or a camera shows, drawn no larger than a reader needs. */
export function pixelsOf({ image, width, height }: Source, most: number): ImageData {
  const scale = Math.min(1, most / Math.max(width, height));
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(width * scale)),
    Math.max(1, Math.round(height * scale)),
  );
  const context = canvas.getContext("2d", { willReadFrequently: true })!;
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return context.getImageData(0, 0, canvas.width, canvas.height);
}

/** Codes in a picture that was chosen from a file; null: it is no picture. Large ones are tried in two sizes. */
export async function codesInPicture(file: Blob, read: CodeReader): Promise<string[] | null> {
  let image: ImageBitmap;
  try {
    image = await createImageBitmap(file);
  } catch {
    return null;
  }
  const { width, height } = image;
  for (const most of [1600, 800]) {
    const found = await read(pixelsOf({ image, width, height }, most));
    if (found.length > 0) return found;
  }
  return [];
}
