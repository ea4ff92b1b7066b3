/** A PDF as pdf.js reads it back. */
export interface ReadPdf {
  pages: string[];
  roles: { role: string; alt?: string }[];
  info: Record<string, unknown>;
  outline: string[];
  size: number[];
  attachments: { name: string; text: string; description: string }[];
}

interface Tag {
  role?: string;
  alt?: string;
  children?: Tag[];
}

/** Reads a PDF back: text, tags, properties, bookmarks, attached files. */
export async function readPdf(pdf: Uint8Array): Promise<ReadPdf> {
  // loaded late: it adds globals that jsdom, which draws the figures, must not see when it starts
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  // pdf.js takes the bytes away from their owner, so it gets a copy
  const document = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
  const pages: string[] = [];
  const roles: ReadPdf["roles"] = [];
  const walk = (tag: Tag): void => {
    if (tag.role) roles.push({ role: tag.role, alt: tag.alt });
    for (const child of tag.children ?? []) walk(child);
  };
  let size: number[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    size = page.view;
    const { items } = await page.getTextContent();
    pages.push(
      items
        .map((item) => ("str" in item ? item.str : ""))
        .join(" ")
        .replace(/\s+/g, " "),
    );
    const tree = (await page.getStructTree()) as Tag | null;
    if (tree !== null) walk(tree);
  }
  const { info } = await document.getMetadata();
  const outline = ((await document.getOutline()) ?? []).map((entry) => entry.title);
  const found = ((await document.getAttachments()) ?? {}) as Record<
    string,
    { rawFilename: string; content: Uint8Array; description: string }
  >;
  const attachments = Object.values(found).map(({ rawFilename, content, description }) => ({
    name: rawFilename,
    text: new TextDecoder().decode(content),
    description,
  }));
  await document.destroy();
  return { pages, roles, info: info as Record<string, unknown>, outline, size, attachments };
}
