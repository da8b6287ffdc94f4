import ts from 'typescript';
import { nodesOf, type ProgramGraph } from './program.ts';

/** Ways to change a collection. */
const CHANGES = /^(set|add|delete|clear|push|pop|shift|unshift|splice|sort|reverse|fill|copyWithin)$/;

/** Makers of functions that keep their answers as long as they live: of a module, that is for ever. */
const KEEPERS = /^(lazily|oncePerName)$/;

/** Everything that a module would remember from one call to the next, as `file: what`. */
export function moduleState({ checker, files }: ProgramGraph): readonly string[] {
  const found: string[] = [];
  const isOfModule = (name: ts.Node): boolean => {
    const symbol = checker.getSymbolAtLocation(name);
    const declared = symbol && symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
    const declaration = declared?.valueDeclaration;
    return (
      declaration !== undefined &&
      ts.isVariableDeclaration(declaration) &&
      ts.isVariableStatement(declaration.parent.parent) &&
      ts.isSourceFile(declaration.parent.parent.parent) &&
      !declaration.getSourceFile().isDeclarationFile
    );
  };
  for (const [file, source] of files) {
    const tell = (node: ts.Node): void => {
      found.push(`${file}: ${node.getText(source).split('\n')[0]?.slice(0, 80)}`);
    };
    for (const statement of source.statements)
      if (ts.isVariableStatement(statement)) {
        if (!(statement.declarationList.flags & ts.NodeFlags.Const)) tell(statement);
        for (const { initializer } of statement.declarationList.declarations)
          if (initializer && ts.isCallExpression(initializer) && KEEPERS.test(initializer.expression.getText(source)))
            tell(statement);
      }
    for (const node of nodesOf(source)) {
      if (ts.isPropertyDeclaration(node) && node.modifiers?.some((one) => one.kind === ts.SyntaxKind.StaticKeyword))
        tell(node);
      // While a module is loaded it may put its own tables together.
      if (isAtTop(node)) continue;
      if (
        ts.isCallExpression(node) &&
        ts.isPropertyAccessExpression(node.expression) &&
        CHANGES.test(node.expression.name.text) &&
        isCollection(checker.getTypeAtLocation(node.expression.expression)) &&
        isOfModule(node.expression.expression)
      )
        tell(node);
      if (
        ts.isBinaryExpression(node) &&
        node.operatorToken.kind >= ts.SyntaxKind.FirstAssignment &&
        node.operatorToken.kind <= ts.SyntaxKind.LastAssignment &&
        isOfModule(rootOf(node.left))
      )
        tell(node);
    }
  }
  return found;
}

function isCollection(type: ts.Type): boolean {
  return /^(Weak)?(Map|Set)$|Array$/.test(type.getSymbol()?.name ?? '');
}

/** True outside of every function. */
function isAtTop(node: ts.Node): boolean {
  for (let at = node.parent; at; at = at.parent) if (ts.isFunctionLike(at) || ts.isClassLike(at)) return false;
  return true;
}

/** The name at the beginning of `a.b[c].d`. */
function rootOf(node: ts.Node): ts.Node {
  let at = node;
  while (ts.isPropertyAccessExpression(at) || ts.isElementAccessExpression(at)) at = at.expression;
  return at;
}
