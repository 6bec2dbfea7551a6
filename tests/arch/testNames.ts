import ts from 'typescript'

const TEST_CALLS = new Set(['describe', 'it', 'test', 'appTest'])

/** `it` of `it('...')`, `it.each(cases)('...')`, `it.skipIf(x)('...')`. */
const rootName = (callee: ts.Expression): string => {
  if (ts.isIdentifier(callee)) return callee.text
  if (ts.isPropertyAccessExpression(callee)) return rootName(callee.expression)
  if (ts.isCallExpression(callee)) return rootName(callee.expression)
  return ''
}

const textOf = (node: ts.Expression | undefined): string =>
  node && (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)) ? node.getText() : ''

/** The names of all tests and groups in a test file's text. */
export const testNamesIn = (text: string): readonly string[] => {
  const names: string[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && TEST_CALLS.has(rootName(node.expression))) {
      const name = textOf(node.arguments[0])
      if (name) names.push(name)
    }
    ts.forEachChild(node, visit)
  }
  visit(ts.createSourceFile('test.tsx', text, ts.ScriptTarget.ES2023, true, ts.ScriptKind.TSX))
  return names
}
