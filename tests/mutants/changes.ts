import ts from 'typescript';

/** One number or operator of a source file, and what is put there instead. */
export interface Change {
  readonly id: number;
  readonly file: string;
  readonly line: number;
  /** The line as it stands, without the blanks around it. */
  readonly text: string;
  readonly from: string;
  readonly to: string;
}

/** An operator's neighbor. Both are called by name, so that the choice is made while the program runs. */
const NEIGHBORS = new Map<ts.SyntaxKind, readonly [from: string, to: string]>([
  [ts.SyntaxKind.PlusToken, ['+', '-']],
  [ts.SyntaxKind.MinusToken, ['-', '+']],
  [ts.SyntaxKind.AsteriskToken, ['*', '/']],
  [ts.SyntaxKind.SlashToken, ['/', '*']],
  [ts.SyntaxKind.LessThanToken, ['<', '<=']],
  [ts.SyntaxKind.LessThanEqualsToken, ['<=', '<']],
  [ts.SyntaxKind.GreaterThanToken, ['>', '>=']],
  [ts.SyntaxKind.GreaterThanEqualsToken, ['>=', '>']],
  [ts.SyntaxKind.EqualsEqualsEqualsToken, ['===', '!==']],
  [ts.SyntaxKind.ExclamationEqualsEqualsToken, ['!==', '===']],
  [ts.SyntaxKind.AmpersandAmpersandToken, ['&&', '||']],
  [ts.SyntaxKind.BarBarToken, ['||', '&&']],
]);

/** Whether a number is a figure that the program computes with, and not a name of something. */
function isFigure(node: ts.Node): node is ts.NumericLiteral {
  if (!ts.isNumericLiteral(node)) return false;
  const { parent } = node;
  return !(ts.isPropertyAssignment(parent) && parent.name === node) && !ts.isEnumMember(parent);
}

/** Whether a node is the example of a head: sizes of a picture, of which any will do. */
function isExample(node: ts.Node): boolean {
  return ts.isPropertyAssignment(node) && node.name.getText() === 'example';
}

/** What is put in a number's place. A limit of rounding means nothing in its last hundredth: it is made a million times as coarse. */
function neighborOf(figure: number): number {
  if (figure !== 0 && figure < 1e-5) return figure * 1e6;
  if (figure > 1e9) return figure / 1e6;
  return Number.isInteger(figure) && figure < 100 ? figure + 1 : figure * 1.01;
}

/**
 * A source in which every number and operator asks, while it runs, whether it is the one that is changed: `5` becomes
 * `$number(17, 5, 6)` and `a < b` becomes `$operator(18, '<', '<=', () => a, () => b)`.
 */
export function changeable(file: string, source: string, firstId: number): { text: string; changes: Change[] } {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true);
  const lines = source.split('\n');
  const changes: Change[] = [];
  const add = (node: ts.Node, from: string, to: string): number => {
    const line = tree.getLineAndCharacterOfPosition(node.getStart()).line;
    const id = firstId + changes.length;
    changes.push({ id, file, line: line + 1, text: lines[line]!.trim(), from, to });
    return id;
  };

  const emit = (node: ts.Node): string => {
    if (ts.isTypeNode(node) && !ts.isExpressionWithTypeArguments(node)) return node.getText();
    if (isExample(node)) return node.getText();
    if (isFigure(node)) {
      const to = neighborOf(Number(node.text)); // a separator (1_000) is not in it
      return `$number(${add(node, node.getText(), String(to))}, ${node.getText()}, ${to})`;
    }
    if (ts.isBinaryExpression(node)) {
      const pair = NEIGHBORS.get(node.operatorToken.kind);
      if (pair !== undefined) {
        const id = add(node.operatorToken, ...pair);
        return `$operator(${id}, '${pair[0]}', '${pair[1]}', () => (${emit(node.left)}), () => (${emit(node.right)}))`;
      }
    }
    let text = '';
    let at = node.getStart();
    ts.forEachChild(node, (child) => {
      text += source.slice(at, child.getStart()) + emit(child);
      at = child.getEnd();
    });
    return text + source.slice(at, node.getEnd());
  };
  return { text: emit(tree), changes };
}
