import { parentPort, workerData } from "node:worker_threads";
import { surveyGradingWith } from "./surveyGradingWith.js";
import type { SurveyGrading, SurveyModel } from "./surveyRow.js";

// Started by `surveyPool.ts` only: a chunk of gradings comes in, a chunk of rows goes back.
const work = surveyGradingWith((workerData as { model: SurveyModel }).model);
parentPort?.on("message", ({ number, chunk }: { number: number; chunk: SurveyGrading[] }) => {
  parentPort?.postMessage({ number, rows: chunk.map(work) });
});
