/** One place in which two trip files differ; undefined: there is nothing. */
export interface Difference {
  path: string;
  own: unknown;
  theirs: unknown;
}

const isNested = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null;

/** Where two parsed trip files differ, in the order of the first. */
export function differences(own: unknown, theirs: unknown, path = ""): Difference[] {
  if (!isNested(own) || !isNested(theirs) || Array.isArray(own) !== Array.isArray(theirs))
    return own === theirs ? [] : [{ path, own, theirs }];
  const keys = new Set([...Object.keys(own), ...Object.keys(theirs)]);
  const step = (key: string): string => {
    if (Array.isArray(own)) return `${path}[${key}]`;
    return path === "" ? key : `${path}.${key}`;
  };
  const at = (tree: Record<string, unknown>, key: string): unknown =>
    Object.hasOwn(tree, key) ? tree[key] : undefined;
  return [...keys].flatMap((key) => differences(at(own, key), at(theirs, key), step(key)));
}
