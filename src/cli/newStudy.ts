import { cp, mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { STUDY_FILE } from "../study/parseStudyYaml.js";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";
import { packageFolder } from "./packageFolder.js";
import { parseCall } from "./parseCall.js";

const TEMPLATES = { SI: "reading-room", US: "bus-shelter" } as const;

/** `loambook new`: a copy of an example study to fill with one's own sheets. */
export async function newStudy(words: readonly string[]): Promise<number> {
  const call = parseCall("new", words, { units: { type: "string", default: "SI" } }, true);
  const units = call.text("units");
  if (units !== "SI" && units !== "US") {
    throw new CommandError(EXIT.usage, `Unknown units “${units}”: give SI or US.`);
  }
  const folder = resolve(call.place as string);
  await refuseFilled(folder);
  const draft = `${folder}.${process.pid}.part`;
  try {
    await mkdir(dirname(folder), { recursive: true });
    await cp(join(packageFolder(), "data-examples", TEMPLATES[units]), draft, { recursive: true });
    const text = await readFile(join(draft, STUDY_FILE), "utf8");
    await writeFile(join(draft, STUDY_FILE), asTemplate(text));
    // An empty folder may be replaced; a filled one makes the rename fail.
    await rename(draft, folder);
  } catch (problem) {
    throw new CommandError(
      EXIT.output,
      `${folder} cannot be written: ${(problem as Error).message}`,
    );
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
  process.stdout.write(
    `A study is ready in ${folder}\n\n` +
      "Everything in it is invented. Replace the sheets in sheets/ and the entries of study.yaml by your\n" +
      "own; when nothing invented is left, set “invented: false”.\n\n" +
      `Next: loambook check ${call.place}\n`,
  );
  return EXIT.ok;
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

function asTemplate(text: string): string {
  return text
    .replace(
      /^# Invented study.*\n/,
      "# A study to start from. Everything below and in sheets/ is invented: replace it by your own,\n" +
        "# then set “invented: false”.\n",
    )
    .replace(/^title: .*$/m, "title: A study to start from")
    .replace(/^place: .*$/m, "place: Write where the wall will stand");
}
