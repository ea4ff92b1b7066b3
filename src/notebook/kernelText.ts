import { relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

const PACKAGE_ROOT = fileURLToPath(new URL("../../", import.meta.url));

function shortPath(frame: string, cwd: string): string {
  return frame.replace(/(?<=[ (])(?:file:\/\/)?((?:[A-Za-z]:)?[\\/][^():]*)/, (_, path: string) => {
    const inside = path.lastIndexOf(`node_modules${sep}`);
    if (path.startsWith(PACKAGE_ROOT) && inside < PACKAGE_ROOT.length) {
      return `loambook/${relative(PACKAGE_ROOT, path).split(sep).join("/")}`;
    }
    if (inside >= 0) return path.slice(inside).split(sep).join("/");
    return relative(cwd, path).split(sep).join("/");
  });
}

/**
 * What the kernel wrote about a failure, without what says nothing about the cell: the excerpt and
 * the places of the JavaScript made of it, the frames of Node.js and of the kernel, and the folders
 * of this machine. The message itself stays as it is.
 */
export function kernelText(stderr: string, cwd: string): string {
  return stderr
    .replace(/^evalmachine\.<anonymous>:\d+\n.*\n *\^+\n\n?/gm, "")
    .split("\n")
    .filter(
      (line) =>
        !/^\s+at .*(?:evalmachine\.<anonymous>|\(?node:|tslab[\\/]dist[\\/])/.test(line) &&
        !/^\s+at (?:async )?(?:new )?Promise .*<anonymous>/.test(line),
    )
    .map((line) => (/^\s+at /.test(line) ? shortPath(line, cwd) : line))
    .join("\n")
    .trim();
}
