import { mkdir, mkdtemp, rm, symlink, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { crc32, deflateSync } from "node:zlib";
import { wcagContrast } from "culori";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { report } from "../../src/entries/report.js";
import { cleanSvg } from "../../src/report/cleanSvg.js";
import { readLogo } from "../../src/report/style/logo.js";
import { openReportStyle, readAccent } from "../../src/report/style/openReportStyle.js";
import { checkCss, checkTypst } from "../../src/report/style/ownCode.js";
import { render } from "../../src/words/render.js";

const require = createRequire(import.meta.url);
const codes = (found: readonly { code: string }[]) => found.map(({ code }) => code);
const bytes = (text: string) => new TextEncoder().encode(text);

function png(width: number, height: number): Uint8Array {
  const chunk = (type: string, data: Uint8Array) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const frame = Buffer.alloc(8);
    frame.writeUInt32BE(data.length, 0);
    frame.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
  };
  const header = Buffer.from([0, 0, 0, 0, 0, 0, 0, 0, 8, 0, 0, 0, 0]);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  const lines = deflateSync(Buffer.alloc(Math.min(1e6, (width + 1) * height)));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const chunks = [chunk("IHDR", header), chunk("IDAT", lines), chunk("IEND", Buffer.alloc(0))];
  return new Uint8Array(Buffer.concat([signature, ...chunks]));
}

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "loambook-style-"));
  await mkdir(join(folder, "study", "fonts"), { recursive: true });
  await mkdir(join(folder, "study", "empty"));
  await writeFile(join(folder, "outside.svg"), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  await symlink(join(folder, "outside.svg"), join(folder, "study", "link.svg"));
  await writeFile(
    join(folder, "study", "logo.svg"),
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 2"><rect width="4" height="2"/></svg>',
  );
  await writeFile(join(folder, "study", "own.css"), "h2{color:teal}");
  await writeFile(join(folder, "study", "own.typ"), '#let hair = rgb("#123456")');
  await writeFile(join(folder, "study", "fonts", "broken.ttf"), "no font");
});
afterAll(() => rm(folder, { recursive: true }));

describe("openReportStyle", () => {
  test("reads everything that a study names", async () => {
    const config = {
      logo: "logo.svg",
      logoText: "Sign of a demonstration",
      accent: "teal",
      header: "<b>head</b>",
      footer: "foot",
      css: "own.css",
      typst: "own.typ",
    };
    const { style, findings } = await openReportStyle(join(folder, "study"), config);
    expect(findings).toEqual([]);
    expect(style).toMatchObject({
      logo: { type: "svg", alt: "Sign of a demonstration" },
      accent: { light: "#008080" },
      header: "<b>head</b>",
      footer: "foot",
      css: "h2{color:teal}",
      typst: '#let hair = rgb("#123456")',
    });
    expect((await openReportStyle(folder, undefined)).style).toEqual({});
  });

  test("opens nothing outside the study, also through a link", async () => {
    for (const logo of ["../outside.svg", "link.svg", "/etc/hostname", "."]) {
      const { style, findings } = await openReportStyle(join(folder, "study"), { logo });
      expect(codes(findings), logo).toEqual(["outside-study"]);
      expect(style.logo).toBeUndefined();
    }
  });

  test("tells what is missing, no file, no folder, no font", async () => {
    const study = join(folder, "study");
    const found = async (config: object) => codes((await openReportStyle(study, config)).findings);
    expect(await found({ css: "none.css" })).toEqual(["missing-report-file"]);
    expect(await found({ css: "fonts" })).toEqual(["missing-report-file"]);
    expect(await found({ fonts: "logo.svg" })).toEqual(["missing-report-file"]);
    expect(await found({ fonts: "empty" })).toEqual(["no-fonts"]);
    expect(await found({ fonts: "fonts" })).toEqual(["font-unreadable"]);
  });
});

describe("readLogo", () => {
  test("cleans a drawing and tells what went", () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" onload="x()"><script>1</script><metadata><a/></metadata>' +
      '<image href="https://example.org/a.png"/><rect fill="url(https://example.org/b)" width="9" height="9"/></svg>';
    const { style, findings } = readLogo("l.svg", bytes(svg), "alt");
    const { logo } = style;
    expect(codes(findings)).toEqual(["logo-cleaned"]);
    expect(render(findings[0]!.message)).toContain("fill, href, onload, script");
    expect(render(findings[0]!.message)).not.toContain("metadata");
    expect(logo?.type === "svg" && logo.svg).not.toMatch(/script|onload|example\.org/);
  });

  test("takes a picture of fair size, and refuses what is none", () => {
    expect(readLogo("l.png", png(300, 120), "alt")).toMatchObject({
      style: { logo: { type: "png" } },
      findings: [],
    });
    expect(codes(readLogo("l.png", png(60, 20), "alt").findings)).toEqual(["logo-coarse"]);
    const flipped = png(300, 120);
    flipped[60] ^= 4;
    for (const damaged of [flipped, png(300, 120).slice(0, -20)]) {
      expect(codes(readLogo("l.png", damaged, "alt").findings)).toEqual(["logo-unreadable"]);
    }
    for (const [file, data] of [
      ["l.png", png(9000, 10)],
      ["l.png", bytes("GIF89a")],
      ["l.gif", bytes("GIF89a")],
      ["l.svg", bytes("<svg><g></svg>")],
      ["l.svg", bytes('<svg xmlns="http://www.w3.org/2000/svg"><g/></svg>')],
      ["l.svg", new Uint8Array(1_000_001)],
    ] as const) {
      const read = readLogo(file, data, "alt");
      expect([read.style.logo, ...codes(read.findings)]).toEqual([undefined, "logo-unreadable"]);
    }
  });

  test("without a collector the drawing is cleaned all the same", () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><g><script>1</script></g></svg>';
    expect(cleanSvg(svg, "p-", "alt")).not.toContain("script");
  });
});

describe("readAccent", () => {
  test("warns below 3 : 1, notes below 4.5 : 1, and keeps the colour", () => {
    expect(readAccent("#1f5f8b")).toMatchObject({
      style: { accent: { light: "#1f5f8b" } },
      findings: [],
    });
    const pale = readAccent("#e0c080");
    expect(pale.style.accent?.light).toBe("#e0c080");
    expect(pale.findings).toMatchObject([{ severity: "warning", code: "accent-contrast" }]);
    expect(readAccent("#c07000").findings).toMatchObject([{ severity: "note" }]);
  });

  test("gives a shade for dark screens that can be read", () => {
    for (const colour of ["#000000", "#1f5f8b", "navy", "#5b3a1e", "#800080", "#ffffff"]) {
      const dark = readAccent(colour).style.accent?.dark;
      expect(wcagContrast(dark!, "#1b1714"), colour).toBeGreaterThanOrEqual(4.5);
    }
  });

  test("refuses what is no opaque colour", () => {
    for (const colour of ["umber-ish", "#12", "rgb(0 0 0 / 50%)", "transparent", "red;}"]) {
      const { style, findings } = readAccent(colour);
      expect([style.accent, ...codes(findings)], colour).toEqual([undefined, "accent-unreadable"]);
    }
  });
});

describe("files of the maker's own", () => {
  test("a style sheet may not reach outside, nor end its element", () => {
    for (const css of [
      "@import 'a.css';",
      "a{background:url(https://example.org/x)}",
      "a{background:url( 'x.png' )}",
      "a{background:image-set('x.png' 1x)}",
      "</style><script>",
    ]) {
      expect(codes(checkCss("own.css", `h1{}\n${css}`)), css).toEqual(["css-reaches-outside"]);
      expect(render(checkCss("own.css", `h1{}\n${css}`)[0]!.message)).toContain("Line 2");
    }
    expect(checkCss("own.css", 'a{background:url("data:image/png;base64,AA=="),url(#g)}')).toEqual(
      [],
    );
  });

  test("a Typst file stands alone and defines a part", () => {
    for (const typst of [
      '#import "@preview/a:1.0.0": *\n#let accent = red',
      '#let accent = eval("red")',
      "#let accent = dictionary(std).red",
      '#let wash = read("/document.json")',
    ]) {
      expect(codes(checkTypst("own.typ", typst)), typst).toEqual(["typst-reaches-outside"]);
    }
    expect(codes(checkTypst("own.typ", "#let title-pages = 1"))).toEqual(["typst-without-part"]);
    expect(checkTypst("own.typ", "#let title-page(doc, logo) = [reader]")).toEqual([]);
  });

  test("the schema names a colour without quotes for what it is", () => {
    const read = report.read({ accent: null }, []);
    const [problem] = "problems" in read ? read.problems : [];
    expect(render(problem.message)).toContain("in quotes");
    expect(report.read({ "logo-text": "a", template: "handout" }, [])).toEqual({
      value: { logoText: "a", template: "handout" },
    });
    expect(report.read({ color: "red" }, [])).toHaveProperty("problems");
  });
});

test("fonts of a folder come in the order of their names", async () => {
  const file = require.resolve(
    "@expo-google-fonts/noto-sans-arabic/400Regular/NotoSansArabic_400Regular.ttf",
  );
  // the package's own folder stands for a study: it holds one font
  const { style, findings } = await openReportStyle(dirname(dirname(file)), {
    fonts: "400Regular",
  });
  expect(findings).toEqual([]);
  expect(style.fonts?.map((font) => font.family)).toEqual(["Noto Sans Arabic"]);
});
