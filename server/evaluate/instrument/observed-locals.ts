import ts from "typescript";

/** A local name with a value that the text alone does not determine. */
export interface LocalName {
  readonly name: string;
  /**
   * The expression to observe: the allocation of its value shows the origin. It is the name itself, or the pattern that bound
   * it.
   */
  readonly seen?: string;
  /** Names that its value was computed from. */
  readonly behind: readonly LocalName[];
  /** Initialised wherever it can be used: a parameter, or the variable of a loop. */
  readonly always: boolean;
}

/**
 * Expressions to observe at a call or object literal, because the text alone does not determine their objects: the `r` of
 * `{ load: r.load }` in a callback. A second evaluation must have no effect. So they are names, or elements of a named list,
 * and never any that may not be initialised yet.
 */
export function observedIn(
  nodes: readonly ts.Node[],
  names: ReadonlyMap<string, LocalName>,
  source: ts.SourceFile,
): readonly string[] {
  const seen = new Set<string>();
  const add = (local: LocalName, depth: number): void => {
    if (local.seen) seen.add(local.seen);
    // A name behind this one may be shadowed here.
    if (depth < 4)
      for (const behind of local.behind) if (names.get(behind.name) === behind) add(behind, depth + 1);
  };
  look(
    nodes,
    names,
    (local) => add(local, 0),
    (list, key) => {
      seen.add(`${source.text.slice(list.getStart(source), list.end)}[${key.text}]`);
    },
  );
  return seen.size === 0 ? nothing : [...seen].slice(0, mostSeen);
}

/** Local names that may contribute to an expression's value. */
export function localsIn(node: ts.Node, names: ReadonlyMap<string, LocalName>): readonly LocalName[] {
  const locals = new Set<LocalName>();
  look(
    [node],
    names,
    (local) => locals.add(local),
    () => undefined,
  );
  return [...locals].slice(0, mostSeen);
}

/** Enough for every hand-written plan; more only costs time. */
const mostSeen = 8;

function look(
  nodes: readonly ts.Node[],
  names: ReadonlyMap<string, LocalName>,
  onName: (local: LocalName) => void,
  onElement: (list: ts.Identifier, key: ts.Identifier) => void,
): void {
  for (const node of nodes) lookAt(node, false);

  /** `maybe`: this part is evaluated conditionally. */
  function lookAt(node: ts.Node, maybe: boolean): void {
    switch (node.kind) {
      case ts.SyntaxKind.Identifier: {
        const local = names.get((node as ts.Identifier).text);
        if (local && (local.always || !maybe)) onName(local);
        return;
      }
      case ts.SyntaxKind.ObjectLiteralExpression:
        for (const property of (node as ts.ObjectLiteralExpression).properties)
          lookAtProperty(property, maybe);
        return;
      case ts.SyntaxKind.ElementAccessExpression: {
        const { expression, argumentExpression: key, questionDotToken } = node as ts.ElementAccessExpression;
        if (!maybe && !questionDotToken && ts.isIdentifier(expression) && ts.isIdentifier(key)) {
          onElement(expression, key);
        }
        lookAt(expression, maybe);
        return;
      }
      case ts.SyntaxKind.PropertyAccessExpression:
      case ts.SyntaxKind.ParenthesizedExpression:
      case ts.SyntaxKind.AsExpression:
      case ts.SyntaxKind.SatisfiesExpression:
      case ts.SyntaxKind.NonNullExpression:
      case ts.SyntaxKind.SpreadElement:
        lookAt((node as ts.ParenthesizedExpression).expression, maybe);
        return;
      case ts.SyntaxKind.ConditionalExpression: {
        const { whenTrue, whenFalse } = node as ts.ConditionalExpression;
        lookAt(whenTrue, true);
        lookAt(whenFalse, true);
        return;
      }
      case ts.SyntaxKind.BinaryExpression: {
        const { left, right, operatorToken } = node as ts.BinaryExpression;
        const chooses =
          operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken ||
          operatorToken.kind === ts.SyntaxKind.BarBarToken ||
          operatorToken.kind === ts.SyntaxKind.AmpersandAmpersandToken;
        if (!chooses) return;
        lookAt(left, maybe);
        lookAt(right, true);
      }
    }
  }

  function lookAtProperty(property: ts.ObjectLiteralElementLike, maybe: boolean): void {
    if (ts.isPropertyAssignment(property)) lookAt(property.initializer, maybe);
    else if (ts.isShorthandPropertyAssignment(property)) lookAt(property.name, maybe);
    else if (ts.isSpreadAssignment(property)) lookAt(property.expression, maybe);
  }
}

const nothing: readonly string[] = [];
