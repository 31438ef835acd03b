import ts from 'typescript';

/** What stands for a module that is named only while running. */
export const COMPUTED = '<computed>';

/** Every module that a source file names: import, export from, import(), import types, require(). */
export function importsOf(path: string, text: string): string[] {
  const found: string[] = [];
  const add = (specifier: ts.Node | undefined) => {
    found.push(specifier && ts.isStringLiteralLike(specifier) ? specifier.text : COMPUTED);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier);
    else if (ts.isExportDeclaration(node) && node.moduleSpecifier) add(node.moduleSpecifier);
    else if (ts.isExternalModuleReference(node)) add(node.expression);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node.argument.literal);
    else if (ts.isCallExpression(node) && isImporting(node.expression)) add(node.arguments[0]);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true));
  return found;
}

function isImporting(callee: ts.Expression): boolean {
  return (
    callee.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(callee) && callee.text === 'require')
  );
}
