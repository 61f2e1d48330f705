/**
 * What is used of the rectangle packer. Its main file is no module that Node can import, so the module file is named; that
 * one ships without types.
 */
declare module "maxrects-packer/dist/maxrects-packer.mjs" {
  interface PackedRectangle {
    width: number;
    height: number;
    x: number;
    y: number;
    /** Turned by a quarter: `width` and `height` stay as they were given. */
    rot?: boolean;
  }
  export class MaxRectsBin<T extends PackedRectangle> {
    constructor(
      maxWidth: number,
      maxHeight: number,
      padding: number,
      options: { smart: boolean; pot: boolean; square: boolean; allowRotation: boolean; logic: number },
    );
    add(rectangle: T): T | undefined;
  }
}
