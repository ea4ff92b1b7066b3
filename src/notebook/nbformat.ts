/** Text as nbformat stores it: whole, or one string a line with its line end. */
export type NotebookText = string | readonly string[];

/** What a cell printed on one of its two streams. */
export interface StreamOutput {
  readonly output_type: "stream";
  readonly name: "stdout" | "stderr";
  readonly text: NotebookText;
}

/** One thing shown, in as many forms as its MIME types say. */
export interface DisplayOutput {
  readonly output_type: "display_data";
  readonly data: Readonly<Record<string, unknown>>;
  readonly metadata: Readonly<Record<string, unknown>>;
}

export type CellOutput = StreamOutput | DisplayOutput;

/** One cell; `outputs` and `execution_count` stand in code cells only. */
export interface NotebookCell {
  readonly cell_type: "code" | "markdown" | "raw";
  readonly id: string;
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly source: NotebookText;
  readonly execution_count?: number | null;
  readonly outputs?: readonly CellOutput[];
  readonly attachments?: Readonly<Record<string, unknown>>;
}

/** A notebook in nbformat 4.5. */
export interface NotebookFile {
  readonly nbformat: 4;
  readonly nbformat_minor: number;
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly cells: readonly NotebookCell[];
}

/** Joins a text that may be stored line by line. */
export function joinText(text: NotebookText): string {
  return typeof text === "string" ? text : text.join("");
}

/** Splits a text after its line ends, as nbformat stores it, so that a version control system sees lines. */
export function splitText(text: string): string[] {
  return text === "" ? [] : text.split(/(?<=\n)/);
}

/** Tags of a cell; none where the metadata holds none. */
export function tagsOf(cell: NotebookCell): readonly string[] {
  const { tags } = cell.metadata;
  return Array.isArray(tags) ? tags.filter((tag) => typeof tag === "string") : [];
}
