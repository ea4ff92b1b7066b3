export interface ProgressLine {
  show(text: string): void;
  clear(): void;
}

/** One line on the terminal that says what is going on; nothing where the output is a pipe or a file. */
export function progressLine(): ProgressLine {
  const { stderr } = process;
  if (!stderr.isTTY) return { show: () => {}, clear: () => {} };
  return {
    show: (text) => stderr.write(`\r\u001b[2K${text} …`),
    clear: () => stderr.write("\r\u001b[2K"),
  };
}
