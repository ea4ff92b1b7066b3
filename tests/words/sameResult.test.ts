import { describe, expect, it } from "vitest";
import { openStudy } from "../../src/study/openStudy.js";
import { EXAMPLE_NAMES, exampleResult } from "../support/exampleResult.js";
import { copyStudy } from "../support/studyCopy.js";

describe.each(EXAMPLE_NAMES)("the result of %s", (name) => {
  it("is the same in Spanish but for the language itself and the file that asks for it", async () => {
    const study = copyStudy(name);
    study.edit("study.yaml", /^units: /m, "language: es\nunits: ");
    // Both side by side: one must not speak the other's language.
    const [english, spanish] = await Promise.all([exampleResult(name), openStudy(study.folder)]);
    expect(spanish.config.language).toBe("es");
    const { inputs: _, config, ...rest } = english;
    const { inputs: __, config: theirs, ...others } = spanish;
    expect(others).toEqual(rest);
    expect({ ...theirs, language: config.language }).toEqual(config);
  });
});
