import ts from "typescript";
import { expect, it } from "vitest";
import { at, parse, typescriptIn, visit } from "./tree.ts";

/** Laws that no run uses: printed equations kept beside the ones that are. */
const notInRuns: readonly string[] = ["core/matter/enthalpyPeers.ts"];

/** Second powers, and powers of two, are the same everywhere. */
function isExact(node: ts.BinaryExpression): boolean {
  return node.right.getText() === "2" || node.left.getText() === "2";
}

function differs(node: ts.Node): boolean {
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.AsteriskAsteriskToken)
    return !isExact(node);
  if (!ts.isCallExpression(node)) return false;
  const called = node.expression.getText();
  if (called === "Math.pow") return true;
  const isSine = called === "Math.sin" || called === "Math.cos";
  return isSine && !(ts.isCallExpression(node.parent) && node.parent.expression.getText() === "steady");
}

it("what runs uses no function in whose last digit engines differ", () => {
  const rooms = ["quantity", "matter", "heat", "sky", "cooler", "trip", "forecast", "ensemble", "whatif"];
  const found: string[] = [];
  for (const path of typescriptIn("core")) {
    if (!rooms.includes(path.split("/")[1]!) || notInRuns.includes(path)) continue;
    visit(parse(path), (node) => {
      if (differs(node)) found.push(`${at(node)} ${node.getText().slice(0, 60)}`);
    });
  }
  expect(found).toEqual([]);
});
