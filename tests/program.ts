import path from 'node:path';
import ts from 'typescript';
import { ROOT } from './workspace.ts';

/** The program as the compiler sees it: what each file imports, and what each name means. */
export interface ProgramGraph {
  readonly checker: ts.TypeChecker;
  /** Files of src and site by their path from the root. */
  readonly files: ReadonlyMap<string, ts.SourceFile>;
  /** What each file imports, types and dynamic imports included: files by their path, packages by their name. */
  readonly imports: readonly { readonly file: string; readonly target: string }[];
}

/** Reads src and site with the settings of the project. */
export function readProgram(): ProgramGraph {
  const config = ts.getParsedCommandLineOfConfigFile(path.join(ROOT, 'tsconfig.json'), {}, {
    ...ts.sys,
    onUnRecoverableConfigFileDiagnostic: (one) => {
      throw new Error(ts.flattenDiagnosticMessageText(one.messageText, ' '));
    },
  } as ts.ParseConfigFileHost);
  if (!config) throw new Error('tsconfig.json could not be read');
  const program = ts.createProgram(config.fileNames, config.options);
  const files = new Map(
    program
      .getSourceFiles()
      .filter((one) => !one.isDeclarationFile && !one.fileName.includes('node_modules'))
      .map((one) => [path.relative(ROOT, one.fileName).replaceAll('\\', '/'), one] as const),
  );
  const imports = [...files].flatMap(([file, source]) =>
    ts.preProcessFile(source.text, true, true).importedFiles.map(({ fileName }) => ({
      file,
      target: fileName.startsWith('.') ? path.posix.join(path.posix.dirname(file), fileName) : fileName,
    })),
  );
  return { checker: program.getTypeChecker(), files, imports };
}

/** Every node below one, itself included. */
export function* nodesOf(node: ts.Node): Generator<ts.Node> {
  yield node;
  const children: ts.Node[] = [];
  ts.forEachChild(node, (child) => {
    children.push(child);
  });
  for (const child of children) yield* nodesOf(child);
}
