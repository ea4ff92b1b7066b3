import { parentPort, workerData } from "node:worker_threads";
import { type SurveyGrading, type SurveyModel, surveyGradingWith } from "./surveyRow.js";

// Started by `surveyGradings.ts` only: a chunk of gradings comes in, a chunk of rows goes back.
const work = surveyGradingWith((workerData as { model: SurveyModel }).model);
parentPort?.on("message", ({ number, chunk }: { number: number; chunk: SurveyGrading[] }) => {
  parentPort?.postMessage({ number, rows: chunk.map(work) });
});
