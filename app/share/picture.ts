/** A picture as it looks on this page, as a file of its own: the colours of the look that is on come along. */
export function standalonePicture(svg: string): string {
  const style = getComputedStyle(document.documentElement);
  const names = new Set([...svg.matchAll(/var\(--([a-zA-Z0-9]+)\)/g)].map(([, name]) => name!));
  names.add("sheet");
  const tokens = [...names].map((name) => `--${name}:${style.getPropertyValue(`--${name}`).trim()}`);
  const end = svg.indexOf(">") + 1;
  const ground = '<rect width="100%" height="100%" fill="var(--sheet)"/>';
  return `${svg.slice(0, end)}<style>svg{${tokens.join(";")}}</style>${ground}${svg.slice(end)}`;
}

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
