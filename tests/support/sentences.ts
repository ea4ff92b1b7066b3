import { createRequire } from "node:module";
import { sourceFiles } from "./sourceFiles.js";

const require = createRequire(import.meta.url);

/** A syntax tree's node, as far as it is looked at here. */
interface Node {
  readonly kind: number;
  readonly text?: string;
  readonly tag?: Node;
  readonly template?: Node & {
    readonly head?: { readonly text: string };
    readonly templateSpans?: readonly { readonly literal: { readonly text: string } }[];
  };
}

/** The part of a compiler's interface that is used; the notebook kernel brings one along. */
interface Compiler {
  readonly ScriptTarget: { readonly ES2022: number };
  createSourceFile(name: string, text: string, target: number): Node;
  forEachChild(node: Node, visit: (child: Node) => void): void;
  isTaggedTemplateExpression(node: Node): boolean;
}

/** A sentence that the sources say, by its key, and the file where it stands. */
export interface Sentence {
  readonly key: string;
  readonly file: string;
}

/** Every sentence under `say` in `src/`, read from the syntax tree. */
export function sentences(): Sentence[] {
  const compiler = require("@tslab/typescript-for-tslab") as Compiler;
  return sourceFiles().flatMap(({ path, text }) => {
    const found: Sentence[] = [];
    const visit = (node: Node): void => {
      if (compiler.isTaggedTemplateExpression(node) && node.tag?.text === "say") {
        found.push({ key: keyOf(node), file: path });
      }
      compiler.forEachChild(node, visit);
    };
    visit(compiler.createSourceFile(path, text, compiler.ScriptTarget.ES2022));
    return found;
  });
}

/** The key as `say` makes it. */
function keyOf({ template }: Node): string {
  const spans = template?.templateSpans ?? [];
  return spans.reduce(
    (sentence, { literal }, index) => `${sentence}{${index}}${literal.text}`,
    template?.head?.text ?? template?.text ?? "",
  );
}
