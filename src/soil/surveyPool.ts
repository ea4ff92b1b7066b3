import { Worker } from "node:worker_threads";
import { surveyGradingWith } from "./surveyGradingWith.js";
import type { SurveyGrading, SurveyModel, SurveyRow } from "./surveyRow.js";

export interface SurveyPool {
  /** Chunks that can be under way at once. */
  readonly width: number;
  run(chunk: SurveyGrading[]): Promise<SurveyRow[]>;
  close(): Promise<void>;
}

/** Chunks a worker may have waiting, so that it never stands idle while the file is read. */
const AHEAD = 2;

/** Worker threads that work out chunks of gradings; with 0 threads the work is done in this one. */
export function surveyPool(model: SurveyModel, threads: number): SurveyPool {
  if (threads === 0) {
    const work = surveyGradingWith(model);
    return { width: 1, run: async (chunk) => chunk.map(work), close: async () => {} };
  }
  const waiting = new Map<
    number,
    { resolve: (rows: SurveyRow[]) => void; reject: (problem: Error) => void }
  >();
  let number = 0;
  let failure: Error | undefined;
  const fail = (problem: Error) => {
    failure ??= problem;
    for (const { reject } of waiting.values()) reject(problem);
    waiting.clear();
  };
  const workers = Array.from({ length: threads }, () => {
    const worker = new Worker(new URL("./surveyWorker.js", import.meta.url), {
      workerData: { model },
    });
    worker.on("message", (answer: { number: number; rows: SurveyRow[] }) => {
      waiting.get(answer.number)?.resolve(answer.rows);
      waiting.delete(answer.number);
    });
    worker.on("error", fail);
    return worker;
  });
  return {
    width: threads * AHEAD,
    run: (chunk) =>
      new Promise((resolve, reject) => {
        if (failure) {
          reject(failure);
          return;
        }
        waiting.set(number, { resolve, reject });
        workers[number % threads].postMessage({ number, chunk });
        number++;
      }),
    close: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}
