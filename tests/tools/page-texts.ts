import { join } from 'node:path';
import ts from 'typescript';

/** A text that may reach the page, values in it as 0, where it stands in the source. */
export interface PageText {
  readonly text: string;
  readonly file: string;
}

/** What of `shared/` makes sentences that reach the page; papers, files and schemas do not. */
const sharedRooms =
  /^shared\/(?:figures|job|live|metal|notice|proving|reduce|replay|session|survey|sheet)\/|^shared\/\w+\.ts$/;
/** Where refusals are made that the daemon sends to the page; what only the command line says, and the findings of the check of a profile, are English. */
const refusing =
  /^daemon\/(?:instruments|ports|proving|recording|session)\/|^daemon\/server\/(?:api|job-api|sockets)\.ts$|^daemon\/job\/(?:add-file|check-stations|job-folder|job-store|load)\.ts$|^protocols\/[\w-]+\.ts$/;
const onlyTyped = /^daemon\/recording\/(?:verify|take-check|chain-check)\.ts$/;
const elsewhere =
  /^shared\/(?:api|messages|limits)\.ts$|shared\/sheet\/schema|shared\/session\/demo-setups|\/languages\/|sample-session/;

/** Properties and attributes whose text a person reads, however short it is. */
const shownNames = new Set(
  'title aria-label placeholder alt aria-valuetext word hint what context label caption name says words meaning'.split(
    ' ',
  ),
);
/** Calls whose texts tell programmers something. */
const unseenCalls = new Set([
  'describe',
  'meta',
  'Error',
  'matchMedia',
  'querySelector',
  'closest',
  'matches',
]);

const isSentence = (text: string) => /\p{L}{2,}[,:;.]? \p{L}{2,}/u.test(text);
const isWord = (text: string) => /\p{L}{2,}/u.test(text);

/** Every text of a source that a person may come to read on the page. */
export function textsIn(file: string, source: string): PageText[] {
  const tree = ts.createSourceFile(
    file,
    source,
    ts.ScriptTarget.Latest,
    true,
    file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  );
  const texts: PageText[] = [];
  const add = (text: string) => texts.push({ text: tidy(text), file });
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isTypeNode(node) || ts.isTaggedTemplateExpression(node)) return;
    if (ts.isJsxAttribute(node) && /^(?:class|d|style|data-.*|points)$/.test(node.name.getText())) return;
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
      const called = ts.isPropertyAccessExpression(node.expression) ? node.expression.name : node.expression;
      if (unseenCalls.has(called.getText())) return;
      const [first] = node.arguments ?? [];
      if (/^(?:say|text)$/.test(called.getText()) && first && ts.isStringLiteralLike(first)) {
        add(first.text.replace(/\{\w+\}/g, '0'));
        node.arguments!.slice(1).forEach(visit);
        return;
      }
    }
    if (ts.isJsxText(node)) {
      if (isWord(node.text)) jsxSentences(node).forEach(add);
      return;
    }
    const said = ts.isConditionalExpression(node) ? null : spoken(node);
    for (const text of said ?? []) if (isShown(node) ? isWord(text) : isSentence(text)) add(text);
    // The branches of a sentence belong to it; what stands deeper is looked at by itself.
    if (ts.isTemplateExpression(node)) for (const { expression } of node.templateSpans) deeper(expression);
    else ts.forEachChild(node, visit);
  };
  const deeper = (node: ts.Node): void => {
    if (ts.isConditionalExpression(node) && spoken(node)) visit(node.condition);
    else ts.forEachChild(node, visit);
  };
  visit(tree);
  return texts;
}

/** Without what is glued to it: a sentence that may follow or go before, the comma that joins it to what it stands behind. */
function tidy(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/([.?!])0+(?= |$)/g, '$1')
    .replace(/([.?!])(?: 0+)+ ?$/, '$1')
    .replace(/^[\s,;]+/, '')
    .replace(/^0 (?=\p{Lu}\p{L}{2})/u, '')
    .trim();
}

/** A text between tags with the values that stand beside it. */
function jsxSentences(node: ts.JsxText): string[] {
  const { children } = node.parent;
  const isPart = (child: ts.JsxChild) =>
    ts.isJsxText(child) || (ts.isJsxExpression(child) && !hasTags(child));
  let [first, last] = [children.indexOf(node), children.indexOf(node)];
  while (first > 0 && isPart(children[first - 1]!)) first--;
  while (last < children.length - 1 && isPart(children[last + 1]!)) last++;
  return children.slice(first, last + 1).reduce<string[]>(
    (begun, child) => {
      const values = ts.isJsxText(child) ? [child.text] : spoken((child as ts.JsxExpression).expression);
      return begun.flatMap((text) => (values ?? ['0']).map((value) => text + value));
    },
    [''],
  );
}

function hasTags(node: ts.Node): boolean {
  return (
    ts.isJsxElement(node) || ts.isJsxSelfClosingElement(node) || (ts.forEachChild(node, hasTags) ?? false)
  );
}

/** What an expression may say, a text for each of its branches; values in it are 0. Null when it says nothing itself. */
function spoken(node: ts.Node | undefined): string[] | null {
  if (!node) return null;
  if (ts.isParenthesizedExpression(node)) return spoken(node.expression);
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isConditionalExpression(node)) {
    return [...(spoken(node.whenTrue) ?? ['0']), ...(spoken(node.whenFalse) ?? ['0'])];
  }
  if (!ts.isTemplateExpression(node)) return null;
  return node.templateSpans.reduce<string[]>(
    (begun, { expression, literal }) =>
      begun.flatMap((text) => (spoken(expression) ?? ['0']).map((value) => text + value + literal.text)),
    [node.head.text],
  );
}

function isShown(node: ts.Node): boolean {
  let at = node.parent;
  while (ts.isConditionalExpression(at) || ts.isJsxExpression(at) || ts.isArrowFunction(at)) at = at.parent;
  if (ts.isJsxAttribute(at)) return at.name.getText() !== 'name' && shownNames.has(at.name.getText());
  return ts.isPropertyAssignment(at) && shownNames.has(at.name.getText());
}

/** Every text that may come to the page: its own, sentences made in `shared/`, and refusals of the daemon. */
export function pageTexts(root: string): PageText[] {
  const files = ['web', 'shared', 'daemon', 'protocols'].flatMap((room) =>
    ts.sys.readDirectory(join(root, room), ['.ts', '.tsx']),
  );
  return files
    .map((file) => file.slice(root.length + 1))
    .filter((file) => !/\.test\.tsx?$/.test(file) && !elsewhere.test(file) && !onlyTyped.test(file))
    .filter((file) => file.startsWith('web/') || sharedRooms.test(file) || refusing.test(file))
    .flatMap((file) => textsIn(file, ts.sys.readFile(join(root, file)) ?? ''));
}
