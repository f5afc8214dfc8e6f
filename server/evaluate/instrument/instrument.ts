import ts from "typescript";
import { words } from "../../../library/model/record.ts";
import { exportLine, type ImportLine, importLine } from "../text/import-lines.ts";
import type { EditedToken } from "../text/one-token-edit.ts";
import { type LocalName, localsIn, observedIn } from "./observed-locals.ts";
import { changedInput, type WrittenInput, writtenInput } from "./plain-input.ts";
import {
  continuesOptionalChain,
  isConstantOfFile,
  isDeclared,
  isExported,
  isImportDefer,
  isObject,
  isPlain,
  leftOverName,
  notRunInPattern,
  yieldsInside,
} from "./syntax-queries.ts";
import { type Insertion, type SplicedText, TextSplices } from "./text-splices.ts";

/**
 * Instruments stripped JavaScript with the hooks described in `sandbox.ts`. The same walk of the tree collects the imports,
 * those of their names that are used as values, and syntax that cannot be run.
 *
 * `js` has every character of the source at its own position; `file` numbers the file. Instrumentation never adds a line and
 * never changes the behaviour of the program. A call or literal that it would change stays as it is, which only costs
 * precision.
 */
export function instrument(
  source: ts.SourceFile,
  js: string,
  file: number,
  leftOver: readonly ts.Node[],
): Instrumented {
  return new Instrumenter(source, file * sitesInFile).finish(js, leftOver);
}

export interface Instrumented {
  /** The instrumented text, with the mapping of its offsets to those of the source. */
  readonly js: SplicedText;
  /** Call sites and literals, in the order of their numbers; the first number is the file's number times {@link sitesInFile}. */
  readonly sites: readonly Site[];
  /** Destructuring patterns that were given a name, in the order of {@link patternName}. */
  readonly patterns: readonly ts.ObjectBindingPattern[];
  readonly imports: readonly ImportLine[];
  readonly refused: readonly Refused[];
  /** Indices in `sites`, in order, of the calls of DSL functions that every run of the file to its end must enter. */
  readonly certain: readonly number[];
}

export type CallLike = ts.CallExpression | ts.NewExpression;

/** An instrumented call or literal. */
export interface Site {
  readonly node: CallLike | ts.ObjectLiteralExpression;
  /** The expressions passed as `seen`, as they appear in the instrumented text. */
  readonly seen: readonly string[];
  /** The argument of a DSL function, if the text determines it: the call is `__written`, and its argument not evaluated. */
  readonly input?: WrittenInput;
}

interface Refused {
  readonly start: number;
  readonly end: number;
  readonly reason: "syntax-not-run" | "import-not-allowed";
  /** In a builder's words: "A decorator". */
  readonly what: string;
}

/**
 * The same for the same tree after one literal in it changed, outside imports and exports. Undefined if the change affects more
 * than that literal, and the tree must be walked again.
 */
export function withLiteral(before: Instrumented, { node, change }: EditedToken): Instrumented | undefined {
  const { refused, imports } = before;
  if (refused.length > 0 || imports.some(({ end }) => end > change.start)) return undefined;
  const js = before.js.withToken(change);
  const at = before.sites.findIndex((site) => site.input && contains(site.node, node));
  const site = before.sites[at];
  if (!js || !site) return js && { ...before, js };
  const input = changedInput(site.node as ts.CallExpression);
  return input && { ...before, js, sites: before.sites.with(at, { ...site, input }) };
}

/** More call sites and literals than in any file written by hand. */
export const sitesInFile = 2 ** 24;

const K = ts.SyntaxKind;

class Instrumenter {
  readonly #source: ts.SourceFile;
  readonly #text: string;
  readonly #firstSite: number;
  readonly #sites: Site[] = [];
  readonly #patterns: ts.ObjectBindingPattern[] = [];
  readonly #splices = new TextSplices();
  readonly #refused: Refused[] = [];
  readonly #importLines: ts.ImportDeclaration[] = [];
  readonly #exportLines: ts.ExportDeclaration[] = [];
  /** Identifiers used as values. */
  readonly #used = new Set<string>();
  /** Local names of the DSL functions from plain imports. */
  readonly #words = new Set<string>();
  /** Names that the file declares other than by an import, each with the number of its declarations. */
  readonly #declared = new Map<string, number>();
  /** Constants at the top of the file, with the ends of their declarations. */
  readonly #constants = new Map<string, number>();
  readonly #imported = new Set<string>();
  readonly #written: WrittenCall[] = [];
  readonly #unused: UnusedCall[] = [];
  readonly #names = new Map<string, LocalName>();
  readonly #undo: [string, LocalName | undefined][] = [];
  readonly #certain: { readonly site: number; readonly word: string }[] = [];
  readonly #libraries = new Set<string>();
  /** True at nodes that every run of the file to its end evaluates. */
  #always = true;
  #depth = 0;
  #tries = 0;
  #loops = 0;

  constructor(source: ts.SourceFile, firstSite: number) {
    this.#source = source;
    this.#text = source.text;
    this.#firstSite = firstSite;
  }

  finish(js: string, leftOver: readonly ts.Node[]): Instrumented {
    for (const statement of this.#source.statements) this.#visit(statement);
    for (const node of leftOver) this.#refuse(node, leftOverName(node));
    for (const call of this.#written) this.#finishWritten(call);
    for (const call of this.#unused) this.#finishUnused(call);
    const around = { source: this.#source, used: this.#used, splices: this.#splices };
    const imports = [
      ...this.#importLines.map((line) => importLine(line, around)),
      ...this.#exportLines.flatMap((line) => exportLine(line, this.#source)),
    ];
    return {
      js: this.#splices.apply(js),
      sites: this.#sites,
      patterns: this.#patterns,
      imports,
      refused: this.#refused,
      // A name that the file also declares may refer to that declaration there.
      certain: this.#certain.flatMap(({ site, word }) => (this.#declared.has(word) ? [] : [site])),
    };
  }

  readonly #visit = (node: ts.Node): void => {
    const { kind } = node;
    if (kind >= K.FirstTypeNode && kind <= K.LastTypeNode) return;
    if (++this.#depth > deepest) throw new RangeError("nested too deeply");
    const always = this.#always;
    this.#always = always && leadsOn(node);
    this.#visitAs(kind, node);
    this.#always = always;
    this.#depth--;
  };

  #visitAs(kind: ts.SyntaxKind, node: ts.Node): void {
    // QuickJS checks interrupts at calls, not at loop iterations: a plan stopped in this loop is stopped at this hook.
    if (ts.isIterationStatement(node, false) && standsInList(node)) this.#before(node, "__open();");
    switch (kind) {
      case K.Identifier:
        this.#used.add((node as ts.Identifier).text);
        return;
      case K.NumericLiteral:
      case K.StringLiteral:
      case K.InterfaceDeclaration:
      case K.TypeAliasDeclaration:
      case K.TypeParameter:
      // Stripped, or refused as a whole.
      case K.ModuleDeclaration:
      case K.EnumDeclaration:
      case K.ImportEqualsDeclaration:
        return;
      case K.ImportDeclaration:
        this.#visitImport(node as ts.ImportDeclaration);
        return;
      case K.ExportDeclaration:
        this.#visitExport(node as ts.ExportDeclaration);
        return;
      case K.ExpressionStatement:
        this.#visitHeld((node as ts.ExpressionStatement).expression, nowhere);
        return;
      case K.CallExpression:
        this.#visitCall(node as ts.CallExpression);
        return;
      case K.NewExpression:
        this.#instrumentCall(node as ts.NewExpression);
        return;
      case K.ObjectLiteralExpression:
        this.#instrumentLiteral(node as ts.ObjectLiteralExpression);
        return;
      case K.ArrayLiteralExpression:
        this.#visitList(node as ts.ArrayLiteralExpression);
        return;
      case K.PropertyAccessExpression:
        this.#visit((node as ts.PropertyAccessExpression).expression);
        return;
      case K.PropertyAssignment: {
        const { name, initializer } = node as ts.PropertyAssignment;
        this.#visitPropertyName(name);
        this.#visit(initializer);
        return;
      }
      case K.VariableStatement:
        if (isDeclared(node)) return;
        break;
      case K.VariableDeclarationList:
        this.#refuseUsing(node);
        break;
      case K.VariableDeclaration:
        this.#visitVariable(node as ts.VariableDeclaration);
        return;
      case K.FunctionDeclaration:
      case K.FunctionExpression:
      case K.ArrowFunction:
      case K.MethodDeclaration:
      case K.Constructor:
      case K.GetAccessor:
      case K.SetAccessor:
        this.#visitFunction(node as ts.FunctionLikeDeclaration);
        return;
      case K.ClassDeclaration:
      case K.ClassExpression: {
        const { name } = node as ts.ClassLikeDeclaration;
        if (name) this.#countDeclared(name.text);
        if (isDeclared(node)) return;
        break;
      }
      case K.HeritageClause:
        if ((node as ts.HeritageClause).token === K.ImplementsKeyword) return;
        break;
      case K.PropertyDeclaration: {
        const { name, initializer, modifiers } = node as ts.PropertyDeclaration;
        this.#refuseDecorators(node);
        for (const modifier of modifiers ?? [])
          if (modifier.kind === K.AccessorKeyword) this.#refuse(modifier, "An accessor field");
        this.#visitPropertyName(name);
        if (initializer && !isDeclared(node)) this.#visit(initializer);
        return;
      }
      case K.BinaryExpression:
        this.#visitBinary(node as ts.BinaryExpression);
        return;
      case K.ForStatement:
      case K.ForInStatement:
      case K.ForOfStatement:
        this.#visitFor(node as ts.ForStatement | ts.ForInOrOfStatement);
        return;
      case K.Block:
      case K.CaseBlock:
        this.#inScope(() => {
          this.#hide(node as ts.Block | ts.CaseBlock);
          ts.forEachChild(node, this.#visit);
        });
        return;
      case K.TryStatement:
        this.#visitTry(node as ts.TryStatement);
        return;
      case K.AwaitExpression:
        this.#before(node, "__leave(__open(),");
        this.#before((node as ts.AwaitExpression).expression, "__awaited(");
        ts.forEachChild(node, this.#visit);
        this.#splices.insert(node.end, "))");
        return;
      case K.LabeledStatement:
        this.#visit((node as ts.LabeledStatement).statement);
        return;
      case K.BreakStatement:
      case K.ContinueStatement:
        return;
      case K.WithStatement:
      case K.NamespaceExportDeclaration:
        this.#refuse(node, leftOverName(node));
        return;
      case K.RegularExpressionLiteral: {
        const what = notRunInPattern((node as ts.RegularExpressionLiteral).text);
        if (what) this.#refuse(node, what);
        return;
      }
      case K.Decorator:
        this.#refuse(node, "A decorator");
        return;
      case K.JsxElement:
      case K.JsxSelfClosingElement:
      case K.JsxFragment:
        this.#refuse(node, "JSX");
        return;
    }
    ts.forEachChild(node, this.#visit);
  }

  /** Its splice is filled in at the end, when all names used as values are known. */
  #visitImport(line: ts.ImportDeclaration): void {
    this.#importLines.push(line);
    const phase = line.importClause?.phaseModifier;
    if (phase === K.DeferKeyword) this.#refuse(line, "import defer");
    const bindings = line.importClause?.namedBindings;
    if (bindings && ts.isNamedImports(bindings)) {
      for (const { name } of bindings.elements) this.#imported.add(name.text);
    }
    if (ts.isStringLiteral(line.moduleSpecifier) && line.moduleSpecifier.text === "loomwright") {
      if (bindings && ts.isNamedImports(bindings)) {
        for (const { name, propertyName } of bindings.elements) {
          if (words.includes((propertyName ?? name).text as never)) this.#words.add(name.text);
        }
      }
      if (bindings && ts.isNamespaceImport(bindings)) this.#libraries.add(bindings.name.text);
    }
  }

  #visitExport(line: ts.ExportDeclaration): void {
    if (line.isTypeOnly) return;
    this.#exportLines.push(line);
    if (line.moduleSpecifier || !line.exportClause || !ts.isNamedExports(line.exportClause)) return;
    for (const element of line.exportClause.elements) {
      if (!element.isTypeOnly) this.#used.add((element.propertyName ?? element.name).text);
    }
  }

  #visitCall(node: ts.CallExpression): void {
    if (node.expression.kind === K.ImportKeyword || isImportDefer(node.expression)) {
      this.#refused.push({
        start: node.getStart(this.#source),
        end: node.end,
        reason: "import-not-allowed",
        what: node.getText(this.#source),
      });
      return;
    }
    const unmarkable = node.expression.kind === K.SuperKeyword || continuesOptionalChain(node);
    if (unmarkable) ts.forEachChild(node, this.#visit);
    else if (yieldsInside(node)) {
      this.#before(node, "__watched(");
      ts.forEachChild(node, this.#visit);
      this.#splices.insert(node.end, ")");
    } else this.#instrumentCall(node);
  }

  #instrumentCall(node: ts.CallExpression | ts.NewExpression): void {
    const { expression, arguments: given } = node;
    const seen = given ? this.#seenIn(given) : nothingSeen;
    const site = this.#site({ node, seen });
    this.#noteCertain(node, site);
    this.#before(node, `__leave(__enter(${site}${passed(seen)}),`);
    this.#visit(expression);
    if (this.#callsWord(node)) this.#visitGiven(node.arguments);
    else given?.forEach(this.#visit);
    this.#splices.insert(node.end, ")");
  }

  /** `holder`: the variable that is the only holder of the value, if there is one. An unused value need not be made. */
  #visitHeld(expression: ts.Expression, holder: string | undefined): void {
    if (holder === undefined || !this.#callsWord(expression)) {
      this.#visit(expression);
      return;
    }
    const read = writtenInput(expression);
    if (read) this.#instrumentPlainInput(expression, read, holder);
    else this.#instrumentUnused(expression, holder);
  }

  /** A call in a loop over a table, for example. */
  #instrumentUnused(node: ts.CallExpression, holder: string): void {
    const [argument] = node.arguments;
    const seen = this.#seenIn(node.arguments);
    const single = node.arguments.length === 1 && argument?.kind === K.ObjectLiteralExpression;
    if (!single || seen.length > 1 || node.questionDotToken || yieldsInside(node)) {
      this.#visit(node);
      return;
    }
    const site = this.#site({ node, seen });
    this.#noteCertain(node, site);
    const before = this.#before(node, "");
    this.#visit(node.expression);
    const bracket = this.#splices.insert(node.expression.end, "");
    const sites = this.#sites.length;
    this.#visitGiven(node.arguments);
    const isSimple = this.#sites.length === sites;
    const after = this.#splices.insert(node.end, "");
    this.#unused.push({ node, site, seen, holder, isSimple, before, bracket, after });
  }

  #finishUnused({ node, site, seen, holder, isSimple, before, bracket, after }: UnusedCall): void {
    const word = node.expression as ts.Identifier;
    if (!isSimple || this.#declared.has(word.text) || this.#used.has(holder)) {
      before.text += `__leave(__enter(${site}${passed(seen)}),`;
      after.text = ")";
      return;
    }
    before.text += `__unused(${site},${seen[0] ?? 0},`;
    bracket.text = ",";
    this.#splices.leaveOut(word.end, node.arguments.pos);
  }

  /** Only the run shows whether the name still means the DSL function there; if not, it makes the call after all. */
  #instrumentPlainInput(node: ts.CallExpression, input: WrittenInput, holder: string): void {
    const seen = input.named.length > 0 ? this.#seenIn(node.arguments) : nothingSeen;
    const site = this.#site({ node, seen, input });
    this.#noteCertain(node, site);
    const before = this.#before(node, "");
    this.#visit(node.expression);
    // No hooks inside the argument: it may be left out, and its values need none. Its names are in use.
    for (const { name } of input.named) this.#used.add(name);
    this.#written.push({
      node,
      site,
      seen,
      input,
      holder,
      before,
      after: this.#splices.insert(node.end, ")"),
    });
  }

  #finishWritten({ node, site, seen, input: { named }, holder, before, after }: WrittenCall): void {
    const word = (node.expression as ts.Identifier).text;
    const start = node.getStart(this.#source);
    const call = `__leave(__enter(${site}${passed(seen)}),`;
    const isWord = !this.#declared.has(word);
    const isRead =
      named.length === 0 ||
      (isWord && seen.length === 0 && named.every(({ name }) => this.#isThere(name, start)));
    if (!isRead || this.#used.has(holder)) {
      before.text += call;
      return;
    }
    const mark = `__written(${site},${word}${passed(named.map(({ expression }) => expression.getText(this.#source)))})`;
    if (!isWord) {
      before.text += `${mark}||${call}`;
      return;
    }
    // Only the import declares the name, so it means the DSL function, and the call need not even be parsed.
    before.text += mark;
    after.text = "";
    this.#splices.leaveOut(start, node.end);
  }

  /** True if a name has one possible meaning and is already initialised: reading it then cannot throw. */
  #isThere(name: string, start: number): boolean {
    const declared = this.#declared.get(name) ?? 0;
    if (this.#imported.has(name)) return declared === 0;
    return declared === 1 && (this.#constants.get(name) ?? start) < start;
  }

  /** Outside loops, most plans have no names that need to be observed. */
  #seenIn(nodes: readonly ts.Node[]): readonly string[] {
    return this.#names.size === 0 && this.#loops === 0
      ? nothingSeen
      : observedIn(nodes, this.#names, this.#source);
  }

  #callsWord(node: ts.Expression): node is ts.CallExpression {
    return (
      ts.isCallExpression(node) && ts.isIdentifier(node.expression) && this.#words.has(node.expression.text)
    );
  }

  #noteCertain({ expression, flags }: CallLike, site: number): void {
    if (!this.#always || flags & ts.NodeFlags.OptionalChain) return;
    if (ts.isIdentifier(expression)) {
      if (this.#words.has(expression.text))
        this.#certain.push({ site: site - this.#firstSite, word: expression.text });
    } else if (ts.isPropertyAccessExpression(expression) && ts.isIdentifier(expression.expression)) {
      const { expression: library, name } = expression;
      const isWord = this.#libraries.has(library.text) && words.includes(name.text as never);
      if (isWord) this.#certain.push({ site: site - this.#firstSite, word: library.text });
    }
  }

  /** The call already identifies the literal given to a DSL function, and those nested in it. */
  #visitGiven(given: readonly ts.Expression[]): void {
    for (const argument of given) {
      if (ts.isObjectLiteralExpression(argument)) this.#visitKnownLiteral(argument);
      else this.#visit(argument);
    }
  }

  #visitKnownLiteral(literal: ts.ObjectLiteralExpression): void {
    for (const property of literal.properties) {
      if (ts.isPropertyAssignment(property)) {
        this.#visitPropertyName(property.name);
        if (ts.isObjectLiteralExpression(property.initializer)) this.#visitKnownLiteral(property.initializer);
        else this.#visit(property.initializer);
      } else this.#visit(property);
    }
  }

  #instrumentLiteral(node: ts.ObjectLiteralExpression): void {
    const seen = this.#seenIn([node]);
    this.#before(node, `__literal(${this.#site({ node, seen })},`);
    ts.forEachChild(node, this.#visit);
    this.#splices.insert(node.end, `${passed(seen)})`);
  }

  /** The rows of a table have one hook together. */
  #visitList(node: ts.ArrayLiteralExpression): void {
    const { elements } = node;
    const isTable =
      elements.length > 1 &&
      elements.every(ts.isObjectLiteralExpression) &&
      this.#seenIn(elements).length === 0;
    if (!isTable) {
      ts.forEachChild(node, this.#visit);
      return;
    }
    const sites = elements.map((row) =>
      this.#site({ node: row as ts.ObjectLiteralExpression, seen: nothingSeen }),
    );
    this.#before(node, `__literals(${sites[0]},`);
    for (const row of elements) ts.forEachChild(row, this.#visit);
    this.#splices.insert(node.end, ")");
  }

  #visitPropertyName(name: ts.PropertyName): void {
    if (ts.isComputedPropertyName(name)) this.#visit(name.expression);
  }

  #visitVariable(node: ts.VariableDeclaration): void {
    const { name, initializer } = node;
    if (!ts.isIdentifier(name)) {
      this.#visitPattern(name, isExported(node) ? undefined : false);
      if (initializer) this.#visit(initializer);
      return;
    }
    if (initializer) this.#visitHeld(initializer, isExported(node) ? undefined : name.text);
    if (isConstantOfFile(node)) this.#constants.set(name.text, node.end);
    this.#declare(name, initializer && this.#localOf(name.text, initializer));
  }

  #localOf(name: string, initializer: ts.Expression): LocalName | undefined {
    if (this.#callsWord(initializer)) return undefined;
    const behind = this.#names.size === 0 ? [] : localsIn(initializer, this.#names);
    const told = isPlain(initializer) && (behind.length === 0 || !isObject(initializer));
    if (told && behind.length === 0) return undefined;
    return { name, ...(told ? {} : { seen: name }), behind, always: false };
  }

  /** `always` undefined: do not name the pattern itself. */
  #visitPattern(pattern: ts.BindingPattern, always: boolean | undefined): void {
    const named = always !== undefined && ts.isObjectBindingPattern(pattern) && pattern.elements.length > 0;
    const seen = named ? this.#namePattern(pattern) : undefined;
    this.#visitPatternElements(pattern, seen, always ?? false);
  }

  /**
   * Inserted after its first property: an error from destructuring undefined then names that property, as without
   * instrumentation.
   */
  #namePattern(pattern: ts.ObjectBindingPattern): string {
    const seen = patternName(this.#patterns.push(pattern) - 1);
    const first = pattern.elements[0] as ts.BindingElement;
    if (first.dotDotDotToken) this.#splices.insert(first.getStart(this.#source), `[__self]:${seen},`);
    else this.#laterSplice = { at: first.end, text: `,[__self]:${seen}` };
    return seen;
  }

  /** Must follow the splices within the pattern's first property. */
  #laterSplice: { at: number; text: string } | undefined;

  #visitPatternElements(pattern: ts.BindingPattern, seen: string | undefined, always: boolean): void {
    const later = this.#laterSplice;
    this.#laterSplice = undefined;
    for (const [index, element] of pattern.elements.entries()) {
      if (ts.isBindingElement(element)) {
        if (element.propertyName) this.#visitPropertyName(element.propertyName);
        if (ts.isIdentifier(element.name)) {
          const name = element.name.text;
          this.#declare(element.name, { name, seen: seen ?? name, behind: [], always });
        } else this.#visitPatternElements(element.name, seen, always);
        if (element.initializer) this.#visitPerhaps(element.initializer);
      }
      if (index === 0 && later) this.#splices.insert(later.at, later.text);
    }
  }

  /** A default value. */
  #visitPerhaps(initializer: ts.Expression): void {
    const always = this.#always;
    this.#always = false;
    this.#visit(initializer);
    this.#always = always;
  }

  #visitFunction(node: ts.FunctionLikeDeclaration): void {
    this.#refuseDecorators(node);
    if (node.name && ts.isIdentifier(node.name)) this.#countDeclared(node.name.text);
    else if (node.name) this.#visitPropertyName(node.name as ts.PropertyName);
    if (!node.body) return;
    const { body } = node;
    this.#inScope(() => {
      for (const parameter of node.parameters) this.#visitParameter(parameter);
      this.#visit(body);
    });
  }

  #visitParameter(node: ts.ParameterDeclaration): void {
    this.#refuseDecorators(node);
    const { name, initializer, type } = node;
    if (ts.isIdentifier(name)) {
      const simple = type && simpleTypes.has(type.kind);
      this.#declare(
        name,
        simple ? undefined : { name: name.text, seen: name.text, behind: [], always: true },
      );
    } else this.#visitPattern(name, true);
    if (initializer) this.#visit(initializer);
  }

  #visitBinary(node: ts.BinaryExpression): void {
    const assigns = node.operatorToken.kind === K.EqualsToken;
    if (assigns && (ts.isObjectLiteralExpression(node.left) || ts.isArrayLiteralExpression(node.left))) {
      this.#visitTarget(node.left);
    } else this.#visit(node.left);
    this.#visit(node.right);
  }

  /** A destructuring target looks like a literal but is not; only its names matter. */
  #visitTarget(node: ts.Node): void {
    ts.forEachChild(node, (child) => {
      if (ts.isIdentifier(child)) this.#used.add(child.text);
      else this.#visitTarget(child);
    });
  }

  #visitFor(node: ts.ForStatement | ts.ForInOrOfStatement): void {
    this.#loops++;
    this.#inScope(() => {
      if (ts.isForStatement(node)) {
        ts.forEachChild(node, this.#visit);
        return;
      }
      const { initializer, expression, statement } = node;
      if (ts.isVariableDeclarationList(initializer)) {
        this.#refuseUsing(initializer);
        const name = initializer.declarations[0]?.name;
        if (name && ts.isIdentifier(name)) {
          this.#declare(name, { name: name.text, seen: name.text, behind: [], always: true });
        } else if (name) this.#visitPattern(name, true);
      } else this.#visitTarget(initializer);
      this.#visit(expression);
      this.#visit(statement);
    });
    this.#loops--;
  }

  #visitTry(node: ts.TryStatement): void {
    const token = `__t${this.#tries++}`;
    this.#before(node, `{const ${token}=__open();`);
    this.#visit(node.tryBlock);
    const { catchClause, finallyBlock } = node;
    if (catchClause) {
      this.#inScope(() => {
        const name = catchClause.variableDeclaration?.name;
        if (name && ts.isIdentifier(name)) this.#declare(name, undefined);
        else if (name) this.#visitPattern(name, undefined);
        this.#splices.insert(catchClause.block.getStart(this.#source) + 1, `__leave(${token});`);
        this.#visit(catchClause.block);
      });
    }
    if (finallyBlock) {
      this.#splices.insert(finallyBlock.getStart(this.#source) + 1, `__leave(${token});`);
      this.#visit(finallyBlock);
    }
    this.#splices.insert(node.end, "}");
  }

  /** `using`, with or without `await`. */
  #refuseUsing(list: ts.Node): void {
    if (list.flags & ts.NodeFlags.Using) this.#refuse(list, "A using declaration");
  }

  #refuseDecorators(node: ts.Node): void {
    if (!ts.canHaveDecorators(node)) return;
    for (const decorator of ts.getDecorators(node) ?? []) this.#refuse(decorator, "A decorator");
  }

  #refuse(node: ts.Node, what: string): void {
    const start = node.getStart(this.#source);
    const lineEnd = this.#text.indexOf("\n", start);
    const end = lineEnd < 0 ? node.end : Math.min(node.end, lineEnd);
    this.#refused.push({ start, end, reason: "syntax-not-run", what });
  }

  #site(site: Site): number {
    this.#sites.push(site);
    return this.#firstSite + this.#sites.length - 1;
  }

  /** `return{…}` needs a space once a name precedes the brace. */
  #before(node: ts.Node, text: string): Insertion {
    const start = node.getStart(this.#source);
    const glued = start > 0 && ts.isIdentifierPart(this.#text.charCodeAt(start - 1), ts.ScriptTarget.ESNext);
    return this.#splices.insert(start, glued ? ` ${text}` : text);
  }

  #inScope(walk: () => void): void {
    const from = this.#undo.length;
    walk();
    while (this.#undo.length > from) {
      const [name, before] = this.#undo.pop() as [string, LocalName | undefined];
      if (before) this.#names.set(name, before);
      else this.#names.delete(name);
    }
  }

  #declare(name: ts.Identifier, local: LocalName | undefined): void {
    this.#countDeclared(name.text);
    if (reserved.test(name.text))
      this.#refuse(name, `The name ${name.text}, which the evaluator uses itself,`);
    this.#setName(name.text, local);
  }

  /** A block's own names hide outer ones from its first character, before their declarations. */
  #hide(block: ts.Block | ts.CaseBlock): void {
    if (this.#names.size === 0) return;
    const statements = ts.isBlock(block)
      ? [block.statements]
      : block.clauses.map((clause) => clause.statements);
    for (const statement of statements.flat()) {
      if (ts.isVariableStatement(statement)) {
        for (const { name } of statement.declarationList.declarations) this.#hideNamesOf(name);
      } else if (ts.isFunctionDeclaration(statement) || ts.isClassDeclaration(statement)) {
        if (statement.name) this.#hideNamesOf(statement.name);
      }
    }
  }

  #hideNamesOf(name: ts.BindingName): void {
    if (ts.isIdentifier(name)) this.#setName(name.text, undefined);
    else
      for (const element of name.elements) if (ts.isBindingElement(element)) this.#hideNamesOf(element.name);
  }

  #countDeclared(name: string): void {
    this.#declared.set(name, (this.#declared.get(name) ?? 0) + 1);
  }

  #setName(name: string, local: LocalName | undefined): void {
    const before = this.#names.get(name);
    if (!before && !local) return;
    this.#undo.push([name, before]);
    if (local) this.#names.set(name, local);
    else this.#names.delete(name);
  }
}

function contains(outer: ts.Node, inner: ts.Node): boolean {
  return outer.pos <= inner.pos && inner.end <= outer.end;
}

/** True if a statement may be inserted before it. */
function standsInList({ parent }: ts.Node): boolean {
  return ts.isBlock(parent) || ts.isSourceFile(parent) || ts.isCaseOrDefaultClause(parent);
}

/** Far more than in hand-written code, and far less than the stack of any thread allows. */
const deepest = 500;

/** True if a node that always runs also always runs its children, except those for which this is false themselves. */
function leadsOn(node: ts.Node): boolean {
  if (ts.isBinaryExpression(node)) return !choosing.has(node.operatorToken.kind);
  if (ts.isCallExpression(node) || ts.isPropertyAccessExpression(node)) {
    return (node.flags & ts.NodeFlags.OptionalChain) === 0;
  }
  return leadingOn.has(node.kind);
}

const leadingOn = new Set([
  K.ExpressionStatement,
  K.VariableStatement,
  K.VariableDeclarationList,
  K.VariableDeclaration,
  K.ExportAssignment,
  K.Block,
  K.NewExpression,
  K.ArrayLiteralExpression,
  K.ObjectLiteralExpression,
  K.PropertyAssignment,
  K.ComputedPropertyName,
  K.SpreadElement,
  K.SpreadAssignment,
  K.ParenthesizedExpression,
  K.AsExpression,
  K.SatisfiesExpression,
  K.NonNullExpression,
  K.AwaitExpression,
  K.VoidExpression,
  K.TypeOfExpression,
  K.PrefixUnaryExpression,
  K.TemplateExpression,
  K.TemplateSpan,
]);

/** Operators with a right side that may not run; the same holds for defaults in a pattern. */
const choosing = new Set([
  K.AmpersandAmpersandToken,
  K.BarBarToken,
  K.QuestionQuestionToken,
  K.AmpersandAmpersandEqualsToken,
  K.BarBarEqualsToken,
  K.QuestionQuestionEqualsToken,
]);

/** The value of an expression statement has no holder: no name is empty. */
const nowhere = "";

interface WrittenCall {
  readonly node: ts.CallExpression;
  readonly site: number;
  readonly seen: readonly string[];
  readonly input: WrittenInput;
  readonly holder: string;
  /** Filled in at the end, when all other declarations of names are known. */
  readonly before: Insertion;
  readonly after: Insertion;
}

interface UnusedCall extends Omit<WrittenCall, "input"> {
  /** No call and no observed literal is inside the argument. */
  readonly isSimple: boolean;
  /** In place of the bracket before the argument. */
  readonly bracket: Insertion;
}

/** Names that the instrumentation adds. */
const reserved = /^__(?:enter|leave|open|awaited|watched|literal|literals|self|unused|written|[pt]\d+)$/;

/** The name that the instrumentation gives a destructuring pattern, by its number in the file. */
export function patternName(index: number): string {
  return `__p${index}`;
}

const nothingSeen: readonly string[] = [];

const simpleTypes = new Set([K.StringKeyword, K.NumberKeyword, K.BooleanKeyword]);

function passed(seen: readonly string[]): string {
  return seen.length === 0 ? "" : `,${seen.join(",")}`;
}
