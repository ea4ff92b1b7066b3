import { readFileSync } from "node:fs";
import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { parse, stringify } from "yaml";
import { INVENTED_MARKS, PLACEHOLDERS } from "../entries/inventedData.js";
import { parseStudyYaml } from "../entries/parseStudyYaml.js";
import { sheetsOf } from "../entries/sheets.js";
import { STUDY_FORMAT } from "../entries/study.js";
import { studyJsonSchema } from "../entries/studyJsonSchema.js";
import { hasErrors, STUDY_FILE } from "../findings/finding.js";
import { countFindings, formatFindings } from "../findings/format.js";
import { GUIDANCE_ENTRIES } from "../guidance/published/recommendations.js";
import type { SheetSource } from "../lab/sheet/grid.js";
import type { UnitSystem } from "../quantities/format.js";
import { computeStudy } from "../study/computeStudy.js";
import { loneSheets, readStudy } from "../study/readStudy.js";
import { type SheetsAsStudy, sheetsAsStudy } from "../study/sheetsAsStudy.js";
import { render } from "../words/render.js";
import { slug } from "../words/slug.js";
import { type Call, CommandError, EXIT, isSheet, misuse, parseCall } from "./call.js";
import {
  askAnswers,
  askMaterials,
  NEW_QUESTIONS,
  type NewAnswers,
  type NewMaterial,
  parseMaterial,
  terminalAsker,
} from "./newQuestions.js";
import { writeNewFolder } from "./output.js";
import { packageFolder } from "./packageFiles.js";

const OPTIONS = {
  texts: NEW_QUESTIONS.map(({ option }) => option),
  lists: ["material", "sheets"],
  flags: ["no-questions"],
};

/**
 * `loambook new`: a study of one's own sheets, with what they tell and nothing else; or without any, one to
 * fill, from what the user says and an invented example.
 */
export async function newStudy(words: readonly string[]): Promise<number> {
  const call = parseCall("new", words, OPTIONS, "and-sheets");
  const told = toldAnswers(call);
  const toldMaterials = call.list("material").map(material);
  const place = call.places.find((word) => !isSheet(word));
  if (place === undefined) throw misuse("“loambook new” needs the name of a folder.");
  const folder = resolve(place);
  await refuseFilled(folder);
  const sheets = [...call.list("sheets"), ...call.places.filter(isSheet)];
  if (sheets.length > 0) return newFromSheets(place, folder, sheets, told);
  const { answers, materials } =
    process.stdin.isTTY && process.stdout.isTTY && !call.flag("no-questions")
      ? await ask(told, toldMaterials)
      : given(told, toldMaterials);
  const template = studyTemplate(answers.units);
  const placed = placeMaterials(materials, template.entries.materials);
  const text = newStudyYaml(answers, placed, template);
  const { config, findings } = parseStudyYaml(text);
  if (!config) throw misuse(formatFindings(findings));
  const { entries, folder: example } = template;
  const ofBlend = sheetsOf(entries.compaction, entries.strength.sheet);
  const copies = [
    ...placed.flatMap((one) => one.sheets),
    ...ofBlend.map((file) => ({ from: file, to: file })),
  ];
  const files = copies.map(({ from, to }) => [to, readFileSync(join(example, from))] as const);
  const count = await write(folder, text, new Map(files));
  process.stdout.write(
    `A study is ready in ${folder}\n\n` +
      `It computes already (${count}), from invented sheets: the head of ${STUDY_FILE} says which to\n` +
      "replace first. What the blend aims at is left to the designer. When nothing invented is left, set\n" +
      "“invented: false”.\n" +
      `${SCHEMA_FILE} lets an editor check ${STUDY_FILE} while you type.\n\n` +
      `Next: loambook check ${place}\n`,
  );
  return EXIT.ok;
}

/** A study of one's own sheets: they are copied, and what they tell is written down. */
async function newFromSheets(
  place: string,
  folder: string,
  places: readonly string[],
  told: Partial<NewAnswers>,
): Promise<number> {
  const paths: string[] = [];
  for (const one of places) {
    const within = await loneSheets(one);
    paths.push(...(within.length > 0 ? within.map((name) => join(one, name)) : [one]));
  }
  const files = new Map<string, Uint8Array>();
  for (const path of paths) {
    const name = `sheets/${basename(path)}`;
    if (files.has(name)) throw misuse(`Two sheets are called ${basename(path)}: rename one.`);
    const bytes = await readFile(path).catch((problem: NodeJS.ErrnoException) => {
      throw misuse(`${path} cannot be read (${problem.code}).`);
    });
    files.set(name, bytes);
  }
  const found = await sheetsAsStudy(files);
  if (found.text === undefined) {
    throw new CommandError(
      EXIT.badInput,
      `${formatFindings(found.findings)}\n\nNothing was written.`,
    );
  }
  const text = sheetsYaml(found, told);
  const count = await write(folder, text, files);
  process.stdout.write(
    `${formatFindings(found.findings)}\n\nA study of ${files.size === 1 ? "this sheet" : "these sheets"} is ready in ${folder} (${count}).\n` +
      `${STUDY_FILE} holds what they tell; what only you can know stands there as remarks.\n\n` +
      `Next: loambook check ${place}\n`,
  );
  return EXIT.ok;
}

function toldAnswers(call: Call): Partial<NewAnswers> {
  const told = NEW_QUESTIONS.flatMap(({ option, wrong }) => {
    const answer = call.text(option)?.trim();
    if (answer === undefined) return [];
    const problem = wrong(answer);
    if (problem === undefined) return [[option, answer]];
    throw misuse(`--${option} “${answer}” will not do: give ${problem}.`);
  });
  return Object.fromEntries(told) as Partial<NewAnswers>;
}

function material(written: string): NewMaterial {
  const parsed = parseMaterial(written);
  if (parsed) return parsed;
  throw misuse(
    `--material takes soil, sand or gravel and a name, such as “sand: River sand 0/4”, not “${written}”.`,
  );
}

function given(told: Partial<NewAnswers>, toldMaterials: readonly NewMaterial[]) {
  const units = told.units ?? "SI";
  const materials =
    toldMaterials.length > 0 ? toldMaterials : studyTemplate(units).entries.materials;
  if (!materials.some(({ role }) => role === "soil")) {
    throw misuse("One --material must be a soil, such as “soil: Site soil”.");
  }
  return { answers: { ...templateAnswers(units), ...told }, materials };
}

async function ask(told: Partial<NewAnswers>, toldMaterials: readonly NewMaterial[]) {
  const terminal = terminalAsker();
  process.stdout.write(
    "Return takes what stands in brackets; everything can be changed later.\n\n",
  );
  try {
    const answers = await askAnswers(terminal.ask, told, templateAnswers);
    const offered = studyTemplate(answers.units).entries.materials;
    const materials =
      toldMaterials.length > 0 ? toldMaterials : await askMaterials(terminal.ask, offered);
    return given(answers, materials);
  } finally {
    terminal.close();
  }
}

/** Writes the study whole or not at all: it is read and computed before it gets its name. */
async function write(
  folder: string,
  text: string,
  sheets: ReadonlyMap<string, Uint8Array>,
): Promise<string> {
  return writeNewFolder(folder, async (draft) => {
    for (const [name, bytes] of sheets) {
      await mkdir(dirname(join(draft, name)), { recursive: true });
      await writeFile(join(draft, name), bytes);
    }
    await writeFile(join(draft, STUDY_FILE), text);
    const schema = JSON.stringify(studyJsonSchema("7"), undefined, 2);
    await writeFile(join(draft, SCHEMA_FILE), `${schema}\n`);
    const { study, findings } = await readStudy(draft);
    const computed = study ? computeStudy(study, findings) : { findings };
    if (hasErrors(computed.findings)) {
      throw new CommandError(
        EXIT.badInput,
        `${formatFindings(computed.findings)}\n\nThese answers give no study that computes. Nothing was written.`,
      );
    }
    return render(countFindings(computed.findings));
  });
}

async function refuseFilled(folder: string): Promise<void> {
  const entries = await readdir(folder).catch((problem: NodeJS.ErrnoException) => {
    if (problem.code === "ENOENT") return [];
    throw new CommandError(EXIT.output, `${folder} cannot be used: ${problem.message}`);
  });
  if (entries.length > 0) {
    throw new CommandError(EXIT.output, `${folder} is not empty. Give the name of a new folder.`);
  }
}

const EXAMPLES = { SI: "reading-room", US: "bus-shelter" } as const;

const SHEETS = ["sieve", "hydrometer", "limits"] as const;
/** Entries of a material that a new study borrows from an example. */
const BORROWED = ["particle-density", "loose-bulk-density", "moisture", "price"] as const;

/** A material of an example study, as its file has it. */
type TemplateMaterial = NewMaterial &
  Readonly<Partial<Record<(typeof SHEETS)[number], SheetSource>>> &
  Readonly<Partial<Record<(typeof BORROWED)[number], string>>>;

/** The entries of an example study that a new one begins with. */
interface StudyTemplate {
  readonly folder: string;
  readonly entries: {
    readonly date: string;
    readonly currency: string;
    readonly page: string;
    readonly seed: number;
    readonly materials: readonly TemplateMaterial[];
    readonly target: object;
    readonly guidance: string;
    readonly compaction: SheetSource;
    readonly cement: { readonly [key: string]: unknown };
    readonly strength: {
      readonly sheet: SheetSource;
      readonly requirement: { readonly strength: string; readonly [key: string]: unknown };
      readonly [key: string]: unknown;
    };
    readonly batch: object;
    readonly element: Readonly<Record<"length" | "height" | "thickness", string>> &
      Readonly<Record<string, unknown>>;
  };
}

/** The invented example that a new study in these units is made from. */
function studyTemplate(units: "SI" | "US"): StudyTemplate {
  const folder = join(packageFolder(), "data-examples", EXAMPLES[units]);
  const text = readFileSync(join(folder, STUDY_FILE), "utf8");
  // The core schema keeps dates as text.
  return { folder, entries: parse(text, { schema: "core" }) as StudyTemplate["entries"] };
}

/** What is offered where the user says nothing. */
export function templateAnswers(units: "SI" | "US"): NewAnswers {
  const { date, currency, page, element, strength: tested } = studyTemplate(units).entries;
  const { title, place } = PLACEHOLDERS;
  const { length, height, thickness } = element;
  const { strength } = tested.requirement;
  const language = "en";
  return {
    units,
    title,
    place,
    language,
    page,
    currency,
    date,
    length,
    height,
    thickness,
    strength,
  };
}

/** A material of a new study: whose numbers it borrows, and which example sheets are copied for it. */
interface PlacedMaterial extends NewMaterial {
  readonly id: string;
  readonly model: TemplateMaterial;
  readonly sheets: readonly {
    readonly test: (typeof SHEETS)[number];
    readonly from: string;
    readonly to: string;
  }[];
}

/** Words of a name as an id of the study format; none are left of some scripts. */
function idOf(name: string, role: string): string {
  const id = slug(name, 40).replace(/^[^a-z]+/, "");
  return id === "" ? role : id;
}

/** Gives each material an id of its own and an example of its kind; where examples run out they serve again. */
function placeMaterials(
  materials: readonly NewMaterial[],
  examples: readonly TemplateMaterial[],
): PlacedMaterial[] {
  const ids = new Set<string>();
  const served = new Map<string, number>();
  return materials.map(({ role, name }) => {
    const alike = examples.filter((example) => example.role === role);
    const turn = served.get(role) ?? 0;
    served.set(role, turn + 1);
    const model = alike[turn % alike.length];
    const first = idOf(name, role);
    let id = first;
    for (let again = 2; ids.has(id); again++) id = `${first}-${again}`;
    ids.add(id);
    const sheets = SHEETS.flatMap((test) =>
      sheetsOf(model[test]).map((from) => ({
        test,
        from,
        to: `sheets/${id}-${test}${/\.[^.]+$/.exec(from)?.[0] ?? ""}`,
      })),
    );
    return { role, name, id, model, sheets };
  });
}

/** Name of the schema that is laid beside a new study, for editors. */
const SCHEMA_FILE = "study.schema.json";

/** What no template may choose. */
const OPEN_TARGET = `# What the blend aims at: the designer must choose it, and nothing is chosen here. Without it there is no
# blend. Either a power curve, passing = 100 (size / top size) ^ exponent,
# target:
#   exponent: …         # one number, or a range such as … to … of which the best is taken
#   top-size: … mm
# or the band of the guidance, or of an envelope sheet of your own,
# target: { band: guidance }
# guidance: …           # the published recommendation that soil and blend are held against, one of
#                       # ${GUIDANCE_ENTRIES.map(({ id }) => id).join("\n#                       # ")}
# limits:               # conditions that the blend must keep, such as
#   fines: { max: … % }
`;

const written = (entries: object) => stringify(entries, { lineWidth: 0 }).trimEnd();
const line = (key: string, value: unknown) => written({ [key]: value });
const indented = (text: string, by: string) => text.replace(/^(?=.)/gm, by);
/** Lines as an item of a list. */
const listed = (lines: readonly string[]) =>
  indented(lines.join("\n"), "    ").replace(/^ {4}/, "  - ");
/** Some entries of an example, in this order. */
const taken = (entries: Readonly<Record<string, unknown>>, keys: readonly string[]) =>
  Object.fromEntries(keys.map((key) => [key, entries[key]]));

function materialLines({ id, name, role, model, sheets }: PlacedMaterial): string {
  const share = role === "soil" ? [line("share", { min: "30 %" })] : [];
  const lines = [
    line("id", id),
    line("name", name),
    line("role", role),
    ...sheets.map(({ test, to }) => `${line(test, to)}    # ${INVENTED_MARKS.sheet}`),
    ...BORROWED.filter((key) => model[key] !== undefined).map(
      (key) => `${line(key, model[key])}    # ${INVENTED_MARKS.entry}`,
    ),
    ...share,
  ];
  return listed(lines);
}

/** The order in which invented sheets give way to one's own, each step resting on the one before. */
function order(materials: readonly PlacedMaterial[], compaction: string, blocks: string): string {
  const files = (soil: boolean) =>
    materials
      .filter(({ role }) => (role === "soil") === soil)
      .flatMap(({ sheets }) => sheets.map(({ to }) => `#      ${to}\n`))
      .join("");
  const bought = files(false);
  const steps = [
    `The soil, which decides whether the rest is worth while:\n${files(true)}`,
    ...(bought === "" ? [] : [`What can be had near it; then the blend is your own:\n${bought}`]),
    `Compaction of that blend, without cement; then water and density are your own:\n#      ${compaction}\n`,
    `Blocks of that blend with three cement contents or more (“loambook plan” says how many):\n#      ${blocks}\n`,
    "Then the entries below that are marked “invented”.\n",
  ];
  return steps.map((step, index) => `#   ${index + 1}. ${step}`).join("");
}

/** The text of `study.yaml` for a new study: what the user said, and an example's numbers marked as invented. */
function newStudyYaml(
  answers: NewAnswers,
  materials: readonly PlacedMaterial[],
  { entries }: StudyTemplate,
): string {
  const { length, height, thickness } = answers;
  const [compaction, blocks] = [
    ...sheetsOf(entries.compaction),
    ...sheetsOf(entries.strength.sheet),
  ];
  const { requirement, model = "linear", "round-up-to": roundUp = "0.5 %" } = entries.strength;
  const { title, place, date, language, units, page, currency, strength } = answers;
  const purpose = "Choose the blend and the least cement, for review by the responsible engineer.";
  const head = { title, place, purpose, date, language, units, page, currency, seed: entries.seed };
  const bought = taken(entries.cement, ["loose-bulk-density", "bag", "price"]);
  const work = taken(entries.element, ["compacted-lift", "waste"]);
  const asked = {
    strength,
    ...taken(requirement, ["age", "statistic", "confidence"]),
    basis: PLACEHOLDERS.basis,
  };
  return `# yaml-language-server: $schema=${SCHEMA_FILE}
# A study to start from. Every sheet, and every entry marked “invented”, is invented. Replace in this order:
${order(materials, compaction, blocks)}# When nothing invented is left, set “invented: false”. “loambook check” tells at any time what is wrong
# or doubtful, and what would reduce the uncertainty.
${line("format", STUDY_FORMAT)}
invented: true
${written(head)}

materials:
${materials.map(materialLines).join("\n")}

${OPEN_TARGET}

${line("compaction", compaction)}    # ${INVENTED_MARKS.sheet}

# ${INVENTED_MARKS.cement}
${written({ cement: { name: PLACEHOLDERS.cement, ...bought } })}

strength:
  ${line("sheet", blocks)}    # ${INVENTED_MARKS.sheet}
${indented(written({ model, "round-up-to": roundUp, requirement: asked }), "  ")}

# Which blend the laboratory compacted and crushed, and how. Until it stands here the blend is only
# proposed: “loambook site” prints the card of its trial batch, and there is no recipe for the wall.
# tested:
#   shares: { ${materials.map(({ id }) => `${id}: … %`).join(", ")} }
#   crushed: soaked    # dry, moist or soaked
#   curing: how the blocks were cured, in your words
#   shape: cube        # cube, prism or cylinder

${line("batch", entries.batch)}

${written({ element: { name: "Wall", length, height, thickness, ...work } })}
#  openings:
#    - ${OPEN[answers.units].opening}
`;
}

/** How what is still open is written in the units of a study. */
const OPEN = {
  SI: {
    opening: "{ width: 1.2 m, height: 1.3 m, count: 2 }",
    grains: "… kg/m3",
    density: "… kg/m3",
    price: "… per t",
    strength: "… MPa",
    mass: "… kg",
    length: "… m",
    depth: "… mm",
  },
  US: {
    opening: "{ width: 4 ft, height: 4 ft 3 in, count: 2 }",
    grains: "… g/cm3",
    density: "… lb/ft3",
    price: "… per short ton",
    strength: "… psi",
    mass: "… lb",
    length: "… ft",
    depth: "… in",
  },
} as const;

/** Keys of a material that a sheet does not tell, with what each is for. */
const openKeys = (units: UnitSystem) => [
  ["hydrometer", "sheets/…", "tells clay from silt; “pipette” in its place"],
  ["limits", "sheets/…", "plasticity and shrinkage"],
  ["particle-density", OPEN[units].grains, "of the grains; a hydrometer or pipette needs it"],
  ["loose-bulk-density", OPEN[units].density, "for buckets and parts: weigh a full bucket"],
  ["moisture", "… %", "of the heap, for recipes"],
  ["price", OPEN[units].price, "for costs"],
];

/** The text of `study.yaml` for a study of sheets: what they tell, and as remarks what they do not. */
function sheetsYaml(
  { materials, sheets, invented = false }: SheetsAsStudy,
  told: Partial<NewAnswers>,
): string {
  const fileOf = (kind: string) => sheets.find((one) => one.kind === kind)?.file;
  const entry = (key: string, value: string | undefined, open: string) =>
    value === undefined ? open : `${line(key, value)}\n`;
  const heads = (["title", "place", "date", "language", "units", "page", "currency"] as const).map(
    (key) => entry(key, told[key], `# ${key}: …\n`),
  );
  const [compaction, blocks, envelope] = ["compaction", "specimens", "envelope"].map(fileOf);
  const looks = fileOf("looks");
  const { units = "SI" } = told;
  const open = OPEN[units];
  return `# yaml-language-server: $schema=${SCHEMA_FILE}
# What stands here is what your sheets tell. What is commented out only you can know, or a further sheet
# tells: take away the “#” and fill it in. “loambook check” says at any time what comes next.
${line("format", STUDY_FORMAT)}
${invented ? "invented: true\n" : ""}${heads.join("")}
materials:
${materials.map((material) => openMaterial(material, units)).join("\n")}
# Sand and gravel that can be had near it, each with a sieve sheet:
#  - id: …
#    name: …
#    role: sand
#    sieve: sheets/…

# A first mix from a jar: sand for a share of fines.
# add-sand: { sand: …, fines: … % }

${OPEN_TARGET}
${entry("envelope", envelope, "# envelope: sheets/…")}
# Compaction of the blend that is to be built:
${entry("compaction", compaction, "# compaction: sheets/…\n")}
# Blocks of that blend with three cement contents or more, and what is asked of them:
${blocks === undefined ? "# strength:\n#   sheet: sheets/…\n" : `strength:\n  ${line("sheet", blocks)}\n`}#   requirement:
#     strength: ${open.strength}
#     age: … d
#     crushed: …        # dry, moist or soaked
#     statistic: …      # mean, prediction or tolerance
#     confidence: … %
#     basis: …          # the code and clause, or the engineer's letter

# Which blend was compacted and crushed, and how:
${looks === undefined ? "# tested:\n" : `tested:\n  ${line("looks", looks)}\n`}#   shares: { ${materials.map(({ id }) => `${id}: … %`).join(", ")} }
#   crushed: …
#   curing: …
#   shape: …            # cube, prism or cylinder

# For the mix and its quantities:
# cement: { name: …, loose-bulk-density: ${open.density}, bag: ${open.mass} }
# batch: { dry-mass: ${open.mass} }
# element:              # a wall; several as a list, also of kind bench, pier or ring
#   name: …
#   length: ${open.length}
#   height: ${open.length}
#   thickness: ${open.depth}
#   compacted-lift: ${open.depth}
#   waste: … %
`;
}

function openMaterial(
  { id, name, role, sheets }: SheetsAsStudy["materials"][number],
  units: UnitSystem,
): string {
  const lines = [
    line("id", id),
    line("name", name),
    `${line("role", role)}    # soil, sand or gravel`,
    ...Object.entries(sheets).map(([kind, file]) => line(kind, file)),
    ...openKeys(units).flatMap(([key, value, says]) =>
      key in sheets ? [] : [`# ${key}: ${value}    # ${says}`],
    ),
  ];
  return listed(lines);
}
