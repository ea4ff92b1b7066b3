/** What the compiler knows of a name, as it gives it to an editor. */
interface QuickInfo {
  readonly displayParts?: readonly { readonly text: string }[];
  readonly documentation?: readonly { readonly text: string }[];
  readonly tags?: readonly {
    readonly name: string;
    readonly text?: readonly { readonly text: string }[];
  }[];
}

const joined = (parts: readonly { readonly text: string }[] = []) =>
  parts.map(({ text }) => text).join("");

/** Tells a tooltip: what a name is, what it does, its arguments, what it returns and what it throws. */
export function tellQuickInfo({ displayParts, documentation, tags = [] }: QuickInfo): string {
  const told = tags
    .map(({ name, text }) => ({ name, text: joined(text) }))
    .filter(({ text }) => text !== "")
    .map(({ name, text }) => (name === "example" ? `@example\n${text}` : `@${name} ${text}`));
  return [joined(displayParts), joined(documentation), told.join("\n")]
    .filter((part) => part !== "")
    .join("\n\n");
}

const CLOSING: Readonly<Record<string, string>> = { ")": "(", "]": "[", "}": "{" };

/**
 * The place of the name whose call's brackets hold a place of a cell; nothing outside of any call.
 * Brackets inside of texts and comments are taken as brackets: the answer is help, no proof.
 */
export function calleeBefore(code: string, place: number): number | undefined {
  const closed: string[] = [];
  for (let at = place - 1; at >= 0; at -= 1) {
    const sign = code[at] as string;
    if (CLOSING[sign] !== undefined) closed.push(CLOSING[sign]);
    else if (sign === closed.at(-1)) closed.pop();
    else if (sign === "(" && closed.length === 0) {
      const name = /[\w$]\s*$/.exec(code.slice(0, at));
      if (name) return name.index;
    }
  }
  return undefined;
}
