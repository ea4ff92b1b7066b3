/** What is used here of the compiler inside tslab: TypeScript 5.0, whose types are no part of ours. */
export interface Compiler {
  isShorthandPropertyAssignment(node: Node): node is Shorthand;
  visitEachChild(node: Node, visit: (node: Node) => Node, context: unknown): Node;
}

interface Node {
  readonly parent?: Node;
}

interface Shorthand extends Node {
  readonly name: { readonly text: string };
  readonly objectAssignmentInitializer?: Node;
}

interface Factory {
  createIdentifier(name: string): Node;
  createPropertyAccessExpression(of: Node, name: string): Node;
  createAssignment(left: Node, right: Node): Node;
  createPropertyAssignment(name: string, value: Node): Node;
}

interface Declared {
  readonly declarations?: readonly { getSourceFile(): Node }[];
}

interface Checker {
  getShorthandAssignmentValueSymbol(node: Node): Declared | undefined;
}

interface Builder {
  getProgram(): { getTypeChecker(): Checker };
  emit(file: unknown, write: unknown, token: unknown, only: unknown, changes?: Changes): unknown;
}

interface Changes {
  readonly before?: readonly unknown[];
}

interface Host {
  afterProgramCreate?: (builder: Builder) => void;
}

/**
 * Lets `{ units }` name what an earlier cell declared. tslab writes `exports.units` for such a name
 * everywhere but in this shorthand, where it stands for key and value.
 *
 * @param host of tslab's compiler, before its first program is made
 */
export function spellOutShorthand(compiler: Compiler, host: Host): void {
  const { afterProgramCreate } = host;
  host.afterProgramCreate = (builder) => {
    const { emit } = builder;
    builder.emit = (file, write, token, only, changes) => {
      const checker = builder.getProgram().getTypeChecker();
      const before = [spelledOut(compiler, checker), ...(changes?.before ?? [])];
      return emit.call(builder, file, write, token, only, { ...changes, before });
    };
    afterProgramCreate?.(builder);
  };
}

function spelledOut(compiler: Compiler, checker: Checker) {
  return (context: { readonly factory: Factory }) => {
    const { factory } = context;
    return (file: Node): Node => {
      // tslab keeps what earlier cells declared as the parent of the cell's file
      const ofEarlierCell = (node: Shorthand): boolean =>
        file.parent !== undefined &&
        (checker.getShorthandAssignmentValueSymbol(node)?.declarations ?? []).some(
          (declaration) => declaration.getSourceFile() === file.parent,
        );
      const visit = (node: Node): Node => {
        if (!compiler.isShorthandPropertyAssignment(node) || !ofEarlierCell(node)) {
          return compiler.visitEachChild(node, visit, context);
        }
        const { text } = node.name;
        const kept = factory.createPropertyAccessExpression(
          factory.createIdentifier("exports"),
          text,
        );
        const { objectAssignmentInitializer: byDefault } = node;
        const value =
          byDefault === undefined
            ? kept
            : factory.createAssignment(kept, compiler.visitEachChild(byDefault, visit, context));
        return factory.createPropertyAssignment(text, value);
      };
      return visit(file);
    };
  };
}
