import { copyFile, mkdir, readdir, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { countFindings, formatFindings } from "../lab/formatFindings.js";
import { computeStudy } from "../study/computeStudy.js";
import { parseStudyYaml, STUDY_FILE } from "../study/parseStudyYaml.js";
import { readStudy } from "../study/readStudy.js";
import { studyJsonSchema } from "../study/studyJsonSchema.js";
import { askAnswers, askMaterials } from "./askAnswers.js";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";
import { NEW_QUESTIONS, type NewAnswers, type NewMaterial, parseMaterial } from "./newAnswers.js";
import { type PlacedMaterial, placeMaterials } from "./newMaterials.js";
import { newStudyYaml, SCHEMA_FILE } from "./newStudyYaml.js";
import { outputProblem } from "./outputProblem.js";
import { type Call, parseCall } from "./parseCall.js";
import { sheetsOf } from "./sheetsOf.js";
import { type StudyTemplate, studyTemplate, templateAnswers } from "./studyTemplate.js";
import { terminalAsker } from "./terminalAsker.js";

const OPTIONS = {
  ...Object.fromEntries(NEW_QUESTIONS.map(({ option }) => [option, { type: "string" as const }])),
  material: { type: "string", multiple: true },
  "no-questions": { type: "boolean" },
} as const;

/** `loambook new`: a study to fill with one's own sheets, from what the user says and an invented example. */
export async function newStudy(words: readonly string[]): Promise<number> {
  const call = parseCall("new", words, OPTIONS, true);
  const told = toldAnswers(call);
  const toldMaterials = call.list("material").map(material);
  const folder = resolve(call.place as string);
  await refuseFilled(folder);
  const { answers, materials } =
    process.stdin.isTTY && process.stdout.isTTY && !call.flag("no-questions")
      ? await ask(told, toldMaterials)
      : given(told, toldMaterials);
  const template = studyTemplate(answers.units);
  const placed = placeMaterials(materials, template.entries.materials);
  const text = newStudyYaml(answers, placed, template);
  const { config, findings } = parseStudyYaml(text);
  if (!config) throw new CommandError(EXIT.usage, formatFindings(findings));
  const count = await write(folder, text, placed, template);
  process.stdout.write(
    `A study is ready in ${folder}\n\n` +
      `It computes already (${count}), from invented sheets: the head of ${STUDY_FILE} says which to\n` +
      "replace first. When nothing invented is left, set “invented: false”.\n" +
      `${SCHEMA_FILE} lets an editor check ${STUDY_FILE} while you type.\n\n` +
      `Next: loambook check ${call.place}\n`,
  );
  return EXIT.ok;
}

function toldAnswers(call: Call): Partial<NewAnswers> {
  const told = NEW_QUESTIONS.flatMap(({ option, wrong }) => {
    const answer = call.text(option)?.trim();
    if (answer === undefined) return [];
    const problem = wrong(answer);
    if (problem === undefined) return [[option, answer]];
    throw new CommandError(EXIT.usage, `--${option} “${answer}” will not do: give ${problem}.`);
  });
  return Object.fromEntries(told) as Partial<NewAnswers>;
}

function material(written: string): NewMaterial {
  const parsed = parseMaterial(written);
  if (parsed) return parsed;
  throw new CommandError(
    EXIT.usage,
    `--material takes soil, sand or gravel and a name, such as “sand: River sand 0/4”, not “${written}”.`,
  );
}

function given(told: Partial<NewAnswers>, toldMaterials: readonly NewMaterial[]) {
  const units = told.units ?? "SI";
  const materials =
    toldMaterials.length > 0 ? toldMaterials : studyTemplate(units).entries.materials;
  if (!materials.some(({ role }) => role === "soil")) {
    throw new CommandError(EXIT.usage, "One --material must be a soil, such as “soil: Site soil”.");
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
  materials: readonly PlacedMaterial[],
  { folder: example, entries }: StudyTemplate,
): Promise<string> {
  const draft = `${folder}.${process.pid}.part`;
  try {
    await mkdir(join(draft, "sheets"), { recursive: true });
    for (const { from, to } of materials.flatMap(({ sheets }) => sheets)) {
      await copyFile(join(example, from), join(draft, to));
    }
    for (const file of sheetsOf(entries.compaction, entries.strength.sheet)) {
      await mkdir(dirname(join(draft, file)), { recursive: true });
      await copyFile(join(example, file), join(draft, file));
    }
    await writeFile(join(draft, STUDY_FILE), text);
    const schema = JSON.stringify(studyJsonSchema("7"), undefined, 2);
    await writeFile(join(draft, SCHEMA_FILE), `${schema}\n`);
    const { study, findings } = await readStudy(draft);
    const computed = study ? computeStudy(study, findings) : { findings };
    if (computed.findings.some(({ severity }) => severity === "error")) {
      throw new CommandError(
        EXIT.badInput,
        `${formatFindings(computed.findings)}\n\nThese answers give no study that computes. Nothing was written.`,
      );
    }
    // An empty folder may be replaced; a filled one makes the rename fail.
    await rename(draft, folder);
    return countFindings(computed.findings);
  } catch (problem) {
    throw outputProblem(folder, problem);
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
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
