import { Worker } from "node:worker_threads";

/** Ends the process with the case's name where one loops for ever: nothing else could tell it from slowness. */
export function watchdog(limitSeconds = 300): {
  begins(name: string): void;
  rests(): void;
  end(): Promise<number>;
} {
  const worker = new Worker(
    `const { parentPort, workerData } = require("node:worker_threads");
     const { writeSync } = require("node:fs");
     let timer;
     parentPort.on("message", (name) => {
       clearTimeout(timer);
       if (name === "") return;
       timer = setTimeout(() => {
         writeSync(2, "\\nNo end after " + workerData + " s: " + name.slice(0, 2000) + "\\n");
         process.kill(process.pid, "SIGKILL");
       }, 1000 * workerData);
     });`,
    { eval: true, workerData: limitSeconds },
  );
  worker.unref();
  return {
    begins: (name) => worker.postMessage(name),
    rests: () => worker.postMessage(""),
    end: () => worker.terminate(),
  };
}
