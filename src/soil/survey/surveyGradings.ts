import { Worker } from "node:worker_threads";
import { checkThat } from "../../quantities/checkNumber.js";
import { readSurvey, type SurveyReading } from "./readSurvey.js";
import {
  type SurveyGrading,
  type SurveyModel,
  type SurveyRow,
  surveyGradingWith,
} from "./surveyRow.js";

export interface SurveyProgress {
  /** Rows given out so far, those left out among them. */
  readonly rows: number;
  readonly leftOut: number;
}

export interface SurveyOptions {
  /** Name of the file, for findings; default `survey`. */
  readonly file?: string;
  /** Default `weibull`. */
  readonly model?: SurveyModel;
  /** Worker threads; default 2. With 0 the work is done in this thread. */
  readonly threads?: number;
  /** Called after each chunk of rows. */
  readonly progress?: (at: SurveyProgress) => void;
}

/** Gradings a message to a worker: large enough to hide its cost, small enough to keep memory flat. */
const CHUNK = 250;

/**
 * Works out many gradings of one file: a fit, D-sizes, fractions and classes a row, in the order of the
 * file, as they come.
 *
 * The file is read as a stream and no more than a few chunks are in memory at any time, however long it
 * is. Header: `id`, sieves in mm or by designation, and where known `liquid limit (%)` and
 * `plasticity index (%)`; one grading a row, percent passing under each sieve. A row that cannot be read
 * or fitted comes out as `left out` with a finding; a header that cannot be read is the only row then.
 *
 * Fits are those of resampling (one start from a straight line, a loose tolerance): they agree with
 * `fitGrading` to about four digits. Take `fitGrading` for a grading that matters.
 *
 * @param chunks the file's text, in pieces of any size: a stream of `node:fs`, or strings.
 * @throws RangeError for another model or a number of threads that is not 0 to 16.
 *
 * @example
 * const text = "id,0.063,0.25,1,4,16\nA1,12,28,50,76,100\nA2,12,many,50,76,100\n";
 * const rows = [];
 * for await (const row of surveyGradings([text], { threads: 0 })) rows.push(row);
 * rows.map(({ id, status }) => [id, status]) // => [["A1", "fitted"], ["", "left out"]]
 * rows[1].finding.code // => "not-a-number"
 */
export async function* surveyGradings(
  chunks: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>,
  { file = "survey", model = "weibull", threads = 2, progress }: SurveyOptions = {},
): AsyncGenerator<SurveyRow> {
  checkThat(
    ["weibull", "lognormal", "power"].includes(model),
    { model },
    "weibull, lognormal or power",
  );
  checkThat(
    Number.isInteger(threads) && threads >= 0 && threads <= 16,
    { threads },
    "a whole number, 0 to 16",
  );
  const pool = surveyPool(model, threads);
  const underWay: Promise<SurveyRow[]>[] = [];
  let [rows, leftOut] = [0, 0];
  const handOut = function* (done: readonly SurveyRow[]) {
    yield* done;
    rows += done.length;
    leftOut += done.filter(({ status }) => status === "left out").length;
    progress?.({ rows, leftOut });
  };
  try {
    for await (const chunk of inChunks(readSurvey(file, chunks))) {
      const fresh = workOut(chunk, model, pool);
      // Awaited in turn below; until then a failed one must not end the process.
      fresh.catch(() => {});
      underWay.push(fresh);
      if (underWay.length < pool.width) continue;
      yield* handOut((await underWay.shift()) ?? []);
    }
    for (const last of underWay) yield* handOut(await last);
  } finally {
    await pool.close();
  }
}

async function* inChunks(readings: AsyncIterable<SurveyReading>): AsyncGenerator<SurveyReading[]> {
  let chunk: SurveyReading[] = [];
  for await (const reading of readings) {
    chunk.push(reading);
    if (chunk.length < CHUNK) continue;
    yield chunk;
    chunk = [];
  }
  if (chunk.length > 0) yield chunk;
}

/** The rows of a chunk, those that were refused in their places. */
async function workOut(
  chunk: readonly SurveyReading[],
  model: SurveyModel,
  pool: SurveyPool,
): Promise<SurveyRow[]> {
  const gradings = chunk.filter((reading) => !("finding" in reading)) as SurveyGrading[];
  const worked = (await pool.run(gradings)).values();
  return chunk.map((reading) => {
    if (!("finding" in reading)) return worked.next().value as SurveyRow;
    return { ...reading, id: "", status: "left out", model, values: [] };
  });
}

interface SurveyPool {
  /** Chunks that can be under way at once. */
  readonly width: number;
  run(chunk: SurveyGrading[]): Promise<SurveyRow[]>;
  close(): Promise<void>;
}

/** Chunks a worker may have waiting, so that it never stands idle while the file is read. */
const AHEAD = 2;

/** Worker threads that work out chunks of gradings; with 0 threads the work is done in this one. */
function surveyPool(model: SurveyModel, threads: number): SurveyPool {
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
