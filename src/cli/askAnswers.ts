import {
  NEW_QUESTIONS,
  type NewAnswers,
  type NewMaterial,
  type NewQuestion,
  parseMaterial,
} from "./newAnswers.js";

/** Puts one line to the user and gives back what they typed. */
export type Ask = (line: string) => Promise<string>;

/** Asks until the answer will do; an empty line takes what stands in brackets. */
export async function askOne(
  ask: Ask,
  question: Pick<NewQuestion, "ask" | "wrong">,
  byDefault: string,
): Promise<string> {
  let complaint = "";
  for (;;) {
    const typed = (await ask(`${complaint}${question.ask} [${byDefault}]: `)).trim();
    const answer = typed === "" ? byDefault : typed;
    const wrong = question.wrong(answer);
    if (wrong === undefined) return answer;
    complaint = `  “${answer}” will not do: ${wrong}.\n`;
  }
}

/**
 * Asks for everything that was not told already.
 *
 * @param defaultsOf what to offer, once the units are known.
 */
export async function askAnswers(
  ask: Ask,
  told: Partial<NewAnswers>,
  defaultsOf: (units: "SI" | "US") => NewAnswers,
): Promise<NewAnswers> {
  let answers: NewAnswers = { ...defaultsOf(told.units ?? "SI"), ...told };
  for (const question of NEW_QUESTIONS) {
    const { option } = question;
    if (told[option] !== undefined) continue;
    const answer = await askOne(ask, question, answers[option]);
    // What is offered from here on is in the units that were just chosen.
    if (option === "units") answers = { ...defaultsOf(answer as "SI" | "US"), ...told };
    answers = { ...answers, [option]: answer };
  }
  return answers;
}

const MOST_BOUGHT = 11;

/** Asks for the materials: the site soil, then what can be bought near it. */
export async function askMaterials(
  ask: Ask,
  byDefault: readonly NewMaterial[],
): Promise<NewMaterial[]> {
  const name = (material: string) => ({
    ask: material,
    wrong: (answer: string) => (parseMaterial(`soil: ${answer}`) ? undefined : "a name"),
  });
  const [soil, ...others] = byDefault;
  const materials: NewMaterial[] = [
    { role: "soil", name: await askOne(ask, name("Name of the site soil"), soil.name) },
  ];
  const count = await askOne(
    ask,
    {
      ask: "How many sands and gravels can be had",
      wrong: (answer) =>
        /^\d+$/.test(answer) && Number(answer) <= MOST_BOUGHT
          ? undefined
          : `a whole number from 0 to ${MOST_BOUGHT}`,
    },
    String(others.length),
  );
  for (let at = 0; at < Number(count); at++) {
    const offered = others[at] ?? { role: "sand" as const, name: `Sand ${at + 1}` };
    const role = await askOne(
      ask,
      {
        ask: `Material ${at + 2}: sand or gravel`,
        wrong: (answer) => (/^(sand|gravel)$/.test(answer) ? undefined : "sand or gravel"),
      },
      offered.role,
    );
    const own = offered.role === role ? offered.name : `Gravel ${at + 1}`;
    materials.push({
      role: role as NewMaterial["role"],
      name: await askOne(ask, name(`Material ${at + 2}: its name`), own),
    });
  }
  return materials;
}
