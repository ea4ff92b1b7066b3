import { describe } from "vitest";
import { testChangedStudies } from "./changedStudies.js";

/** Cases of the long form, asked for by `LOAMBOOK_FUZZ=10000`. */
const LONG = Number(process.env.LOAMBOOK_FUZZ ?? 0);

describe("changed studies", () => {
  testChangedStudies(
    LONG > 0
      ? { cases: LONG, forms: Math.ceil(LONG / 10), isLong: true }
      : { cases: 80, forms: 10 },
  );
});
