import { relative } from 'node:path';
import ts from 'typescript';

/**
 * The exported signatures of an entry file as text, one block a name, sorted: what a user of the package can rely on.
 * Comments and bodies are left out, so the text changes only when the surface does.
 */
export function apiText(root: string, entries: readonly string[]): string {
  const options: ts.CompilerOptions = {
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    allowImportingTsExtensions: true,
    noEmit: true,
    strict: true,
    lib: ['lib.es2023.d.ts'],
    types: [],
    skipLibCheck: true,
  };
  const files = entries.map((entry) => `${root}/${entry}`);
  const program = ts.createProgram(files, options);
  const checker = program.getTypeChecker();
  const parts: string[] = [];
  for (const file of files) {
    const source = program.getSourceFile(file);
    const module = source && checker.getSymbolAtLocation(source);
    if (!source || !module) throw new Error(`${file} exports nothing that can be read`);
    const exported = checker
      .getExportsOfModule(module)
      .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
    parts.push(`# ${relative(root, file)}\n`);
    for (const symbol of exported) parts.push(...signatures(checker, symbol, source));
  }
  return `${parts.join('\n')}\n`;
}

const FORMAT = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.UseAliasDefinedOutsideCurrentScope;

function signatures(checker: ts.TypeChecker, exported: ts.Symbol, source: ts.SourceFile): string[] {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  const printer = ts.createPrinter({ removeComments: true });
  const lines: string[] = [];
  for (const declared of symbol.declarations ?? []) {
    const file = declared.getSourceFile();
    if (ts.isTypeAliasDeclaration(declared) && declared.getText(file).includes('typeof')) {
      // Drawn from a list of values: the values are what a user of the package needs to see.
      const type = checker.getDeclaredTypeOfSymbol(symbol);
      lines.push(
        `type ${exported.name} = ${checker.typeToString(type, source, FORMAT | ts.TypeFormatFlags.InTypeAlias)};`,
      );
    } else if (ts.isInterfaceDeclaration(declared) || ts.isTypeAliasDeclaration(declared)) {
      lines.push(printer.printNode(ts.EmitHint.Unspecified, declared, file).replace(/^export /, ''));
    } else if (ts.isClassDeclaration(declared)) {
      const type = checker.getDeclaredTypeOfSymbol(symbol);
      const members = type.getProperties().map((property) => {
        const of = checker.getTypeOfSymbolAtLocation(property, source);
        return `    ${property.name}: ${checker.typeToString(of, source, FORMAT)};`;
      });
      lines.push(`class ${exported.name} {\n${members.join('\n')}\n}`);
    } else {
      const type = checker.getTypeOfSymbolAtLocation(symbol, source);
      const calls = type.getCallSignatures();
      if (calls.length === 0)
        lines.push(`const ${exported.name}: ${checker.typeToString(type, source, FORMAT)};`);
      else
        for (const call of calls)
          lines.push(`function ${exported.name}${checker.signatureToString(call, source, FORMAT)};`);
    }
  }
  if (lines.length === 0) throw new Error(`${exported.name} has no declaration that can be printed`);
  return [...new Set(lines)].map((line) => `${line}\n`);
}
