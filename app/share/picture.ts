import { standalone } from "../../core/index.ts";
import { look } from "../look/look.svelte.ts";

/** A picture as it looks on this page, as a file of its own; the look for full sun is that of paper. */
export const standalonePicture = (svg: string): string =>
  standalone(svg, look.now === "sun" ? "print" : look.now);

/** The same as PNG, two dots for each CSS pixel. */
export async function asPng(svg: string): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([standalonePicture(svg)], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = image.naturalWidth * 2;
    canvas.height = image.naturalHeight * 2;
    canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) => {
      canvas.toBlob(
        (blob) => (blob === null ? reject(new Error("no picture was made")) : resolve(blob)),
        "image/png",
      );
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}
