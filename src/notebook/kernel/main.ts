import { existsSync } from "node:fs";
import Module, { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import vm from "node:vm";
import { answerAsTyped } from "../answerCell.js";
import {
  type CellError,
  cellFile,
  compileError,
  type Diagnostic,
  type RanCell,
  thrownError,
} from "./cellTrace.js";
import { giveControlAThread } from "./control.js";
import { takeTurns } from "./inTurn.js";
import { calleeBefore, tellQuickInfo } from "./quickInfo.js";
import { type Compiler, spellOutShorthand } from "./shorthand.js";
import { LANGUAGE_INFO } from "./spec.js";
import { keepStarted } from "./started.js";

/**
 * The program of the kernel process: tslab, with what was found wanting in 1.0.22 with zeromq 6.8 mended
 * before it is loaded. It is called with the path of the connection file.
 *
 * Everything here reaches into tslab's own modules, so a new version of it has to be tried first.
 */
const manifest = createRequire(import.meta.url).resolve("tslab/package.json");
const require = createRequire(manifest);
const ownPackage = fileURLToPath(new URL("../../../package.json", import.meta.url));
const NAME = "loambook";
/** What a cell imports by name wherever its notebook lies: this package, and what its notebooks count with. */
const LENT = [NAME, "simple-statistics"];

loseNoOutput();
findOwnPackage();
changeCompiler(onlyNodeTypes, findOwnTypes, knowShorthand, keepTimersApart);
/**
 * For the thread that may have to stop a cell: 1 while what runs may be code of a cell, 0 while the compiler
 * runs; how many cells have begun; and 1 once the thread has closed its socket.
 */
const running = new Int32Array(new SharedArrayBuffer(12));
let tellForgotten: (reason: unknown) => void = () => {};
const tellErrors = tellErrorsOfCells();
runInTurn(tellErrors);
giveControlAThread(require("./dist/jupyter.js").ZmqServer, running);
tellMore();
const { startKernel } = require("./dist/main.js") as {
  startKernel(options: { configPath: string; enableFindLocal: boolean }): void;
};
// a tslab in the notebook's own folder would run without all this
startKernel({ configPath: process.argv[2] ?? "", enableFindLocal: false });
// in place of tslab's own, which prints them below whatever cell is the last
process.removeAllListeners("unhandledRejection").on("unhandledRejection", tellForgotten);

/**
 * The publishing socket takes no more than 512 messages at a stretch unless the time-out is 0, and ZeroMQ
 * drops what is beyond the 1000 it holds. A cell that prints more lines would lose the rest and the sign of
 * its end, so that a front end waits for ever.
 */
function loseNoOutput(): void {
  const zmq = require("zeromq") as { Publisher: new (options?: object) => object };
  zmq.Publisher = class extends zmq.Publisher {
    constructor(options?: object) {
      super({ sendHighWaterMark: 0, sendTimeout: 0, ...options });
    }
  };
}

type Properties = Record<string, PropertyDescriptor>;

/** The compiler's exports cannot be set one by one: a changed copy takes their place before anybody loads it. */
function changeCompiler(...changes: readonly ((properties: Properties) => void)[]): void {
  const path = require.resolve("@tslab/typescript-for-tslab");
  const properties = Object.getOwnPropertyDescriptors(require(path)) as Properties;
  for (const change of changes) change(properties);
  (require.cache[path] as NodeModule).exports = Object.defineProperties({}, properties);
}

function exported<T>(properties: Properties, name: string): T {
  const property = properties[name];
  return property?.get ? property.get() : property?.value;
}

/** Puts a function of the compiler's exports in the place of one that it calls. */
function wrap<F>(properties: Properties, name: string, around: (inner: F) => F): void {
  properties[name] = { value: around(exported<F>(properties, name)), enumerable: true };
}

/**
 * The compiler reads every package of `@types` in the folders above, those of the browser's graphics among
 * them, which doubles the time until the first cell. Only Node's types are global in a cell; the types of a
 * package that a cell imports are found all the same.
 */
function onlyNodeTypes(properties: Properties): void {
  const ownTypes = join(dirname(manifest), "node_modules", "@types");
  if (!existsSync(join(ownTypes, "node", "package.json"))) return;
  properties.getDefaultTypeRoots = { value: () => [ownTypes], enumerable: true };
}

type Resolve = (request: string, ...more: unknown[]) => string;

/**
 * A notebook anywhere imports these packages by name: where its own folder and those above have none, the
 * kernel's own are taken.
 */
function findOwnPackage(): void {
  const loader = Module as unknown as { _resolveFilename: Resolve };
  const resolve = loader._resolveFilename;
  const own = createRequire(ownPackage);
  loader._resolveFilename = function (this: unknown, request, ...more) {
    try {
      return resolve.call(this, request, ...more);
    } catch (error) {
      const named = LENT.some((name) => request === name || request.startsWith(`${name}/`));
      if (!named || (error as NodeJS.ErrnoException).code !== "MODULE_NOT_FOUND") throw error;
      return own.resolve(request);
    }
  };
}

type ResolveTypes = (
  name: string,
  from: string,
  options: object,
  host: unknown,
) => { readonly resolvedModule?: unknown };
type CreateHost = (files: unknown, options: object, ...more: unknown[]) => unknown;

/** The same for the compiler, so that a cell knows the packages' types. */
function findOwnTypes(properties: Properties): void {
  const resolve = exported<ResolveTypes>(properties, "resolveModuleName");
  // as tslab resolves modules
  const options = { moduleResolution: 2 };
  const cell = join(process.cwd(), "cell.ts");
  const isThere = (name: string) =>
    resolve(name, cell, options, exported(properties, "sys")).resolvedModule !== undefined;
  const types = join(dirname(ownPackage), "dist");
  const statistics = createRequire(ownPackage).resolve("simple-statistics/package.json");
  const lent: readonly (readonly [name: string, paths: Readonly<Record<string, string>>])[] = [
    [NAME, { [NAME]: join(types, "index.d.ts"), [`${NAME}/*`]: join(types, "*", "index.d.ts") }],
    ["simple-statistics", { "simple-statistics": join(dirname(statistics), "index.d.ts") }],
  ];
  const paths = Object.fromEntries(
    lent
      .filter(([name]) => !isThere(name))
      .flatMap(([, own]) => Object.entries(own))
      .map(([name, path]) => [name, [path.replaceAll("\\", "/")]]),
  );
  if (Object.keys(paths).length === 0) return;
  wrap<CreateHost>(
    properties,
    "createWatchCompilerHost",
    (create) =>
      (files, given, ...more) =>
        create(files, { ...given, paths }, ...more),
  );
}

/** tslab knows no `{ name }` for what an earlier cell declared. */
function knowShorthand(properties: Properties): void {
  const compiler: Compiler = {
    isShorthandPropertyAssignment: exported(properties, "isShorthandPropertyAssignment"),
    visitEachChild: exported(properties, "visitEachChild"),
  };
  wrap<(host: object) => unknown>(properties, "createWatchProgram", (create) => (host) => {
    spellOutShorthand(compiler, host);
    return create(host);
  });
}

/** The kernel tells its true language and compiler. Tooltips tell what a function returns and throws, and help stands also inside the brackets of a call. */
function tellMore(): void {
  require("./dist/inspect.js").printQuickInfo = tellQuickInfo;
  const { prototype } = require("./dist/jupyter.js").JupyterHandlerImpl as {
    prototype: {
      handleKernel(): { implementation: string; language_info: object };
      handleInspect(request: { readonly code: string; readonly cursor_pos: number }): {
        readonly found: boolean;
      };
    };
  };
  const { handleInspect, handleKernel } = prototype;
  prototype.handleKernel = function () {
    return { ...handleKernel.call(this), implementation: NAME, language_info: LANGUAGE_INFO };
  };
  prototype.handleInspect = function (request) {
    const own = handleInspect.call(this, request);
    if (own.found) return own;
    const callee = calleeBefore(request.code, request.cursor_pos);
    if (callee === undefined) return own;
    return handleInspect.call(this, { ...request, cursor_pos: callee });
  };
}

interface Timers {
  setTimeout(callback: () => void, ms?: number): unknown;
  clearTimeout(timer: unknown): void;
}

/**
 * tslab takes every timer of the compiler for the one that makes the program anew. The other, after a change
 * of some package.json or folder, made it fail at every later cell: that one gets a timer of its own.
 */
function keepTimersApart(properties: Properties): void {
  wrap<CreateHost>(properties, "createWatchCompilerHost", (create) => (files, options, ...more) => {
    const [system] = more as [Timers];
    const { setTimeout: setProgramTimer, clearTimeout: clearProgramTimer } = system;
    const apart = new Set<unknown>();
    system.setTimeout = (callback, ms) => {
      if (callback.name === "updateProgramWithWatchStatus") return setProgramTimer(callback, ms);
      const timer = setTimeout(callback, ms).unref();
      apart.add(timer);
      return timer;
    };
    system.clearTimeout = (timer) => {
      if (apart.delete(timer)) clearTimeout(timer as NodeJS.Timeout);
      else clearProgramTimer(timer);
    };
    return create(files, options, ...more);
  });
}

interface Converted {
  readonly output?: string;
  readonly hasToplevelAwait?: boolean;
}

interface Executor {
  execute(source: string): Promise<boolean>;
  interrupt(): void;
}

/** tslab prints what a cell throws: here it is kept, with what is needed to tell its lines. */
function tellErrorsOfCells(): () => CellError {
  const cells = new Map<number, RanCell>();
  const started = keepStarted();
  let count = 0;
  let failure: CellError | undefined;
  /** Reasons of promises that the running cell forgot; none is kept between cells. */
  let forgotten: { readonly reason: unknown }[] | undefined;
  tellForgotten = (reason) => {
    if (forgotten !== undefined) forgotten.push({ reason });
    else console.error(traced(reason).traceback.join("\n"));
  };
  const traced = (reason: unknown) => thrownError(reason, cells, count, process.cwd());

  const converter = require("./dist/converter.js") as {
    createConverter(options: object): {
      convert(declared: string, source: string): Converted;
      inspect(...asked: unknown[]): unknown;
      complete(...asked: unknown[]): unknown;
    };
  };
  const { createConverter } = converter;
  converter.createConverter = (options) => {
    const made = createConverter(options);
    const convert = (declared: string, source: string): Converted => {
      const converted = undisturbed(() => made.convert(declared, source));
      const prefix = converted.hasToplevelAwait ? ASYNC_PREFIX : PREFIX;
      cells.set(count, { source, emitted: converted.output ?? "", prefix: prefix.length });
      return converted;
    };
    const inspect = (...asked: unknown[]) => undisturbed(() => made.inspect(...asked));
    const complete = (...asked: unknown[]) => undisturbed(() => made.complete(...asked));
    return { ...made, convert, inspect, complete };
  };

  const run = vm.runInThisContext;
  vm.runInThisContext = (code, options) => {
    // only code of cells can be interrupted
    const ofCell = typeof options === "object" && options.breakOnSigint === true;
    if (ofCell) Atomics.store(running, 0, 1);
    return run(code, ofCell ? { ...options, filename: cellFile(count) } : options);
  };

  const executors = require("./dist/executor.js") as {
    createExecutor(
      root: string,
      converters: unknown,
      console: { log(value: unknown): void; error(...words: unknown[]): void },
    ): Executor;
  };
  const { createExecutor } = executors;
  executors.createExecutor = (root, converters, { log }) => {
    let told: (readonly unknown[])[] = [];
    const error = (...words: unknown[]) => told.push(words);
    const shown = (value: unknown) => {
      // `show(x)` at the end of a cell that forgets to wait for it
      if (!(value instanceof Promise && started.handed.has(value))) log(value);
    };
    const inner = createExecutor(root, converters, { log: shown, error });
    let stopWaiting = () => {};
    const execute = async (source: string): Promise<boolean> => {
      count += 1;
      Atomics.store(running, 1, count);
      told = [];
      forgotten = [];
      const ok = await inner.execute(source);
      // tslab races every cell against one promise, which holds them all until it is settled
      inner.interrupt();
      const interrupted = new Promise<void>((resolve) => {
        stopWaiting = resolve;
      });
      await Promise.race([whenShown(), interrupted]);
      const reasons = forgotten;
      forgotten = undefined;
      const first = ok ? reasons.shift() : undefined;
      failure = ok ? first && traced(first.reason) : failureOf(told, source);
      const notes = reasons.map(({ reason }) => [traced(reason).traceback.join("\n")]);
      // modules of a notebook are taken in spite of what the compiler says
      for (const words of ok ? [...told, ...notes] : notes) console.error(...words);
      return failure === undefined;
    };
    const interrupt = () => {
      inner.interrupt();
      stopWaiting();
    };
    return { ...inner, execute, interrupt };
  };
  /** What a cell has begun to show belongs to it, and so does the error of a promise that it forgets. */
  const whenShown = async (): Promise<void> => {
    while (started.work.size > 0) await Promise.all(started.work);
    // by then Node.js has told of promises that nobody waits for
    await new Promise((resolve) => setImmediate(resolve));
  };
  const failureOf = (told: readonly (readonly unknown[])[], source: string): CellError => {
    const [first] = told;
    if (first?.length === 1) return traced(first[0]);
    const diagnostics = told.map(
      ([, , line, column, text]) => ({ line, column, text }) as Diagnostic,
    );
    return compileError(diagnostics, source, process.cwd());
  };
  return () => failure ?? traced(new Error("the cell failed"));
}

/** Runs the compiler, which nobody may stop in its midst. */
function undisturbed<T>(compile: () => T): T {
  const before = Atomics.exchange(running, 0, 0);
  try {
    return compile();
  } finally {
    Atomics.store(running, 0, before);
  }
}

function faultOf(thrown: unknown): CellError {
  const { name, message, stack } = thrown as Error;
  return { ename: name, evalue: message, traceback: [stack ?? message] };
}

/** As tslab's executor writes them. */
const PREFIX = "(function(exports, require) { ";
const ASYNC_PREFIX = "(async function(exports, require) { ";

interface Message {
  readonly content: { readonly code: string; readonly stop_on_error?: boolean };
  createReply(): Reply;
}

interface Reply {
  readonly header: { msg_type: string };
  content: object;
  metadata: object;
  signAndSend(key: string, socket: unknown): void;
}

interface Server {
  readonly connInfo: { readonly key: string };
  readonly iopub: unknown;
  readonly handler: {
    /** Throws the count of a cell that failed. */
    handleExecuteImpl(
      content: object,
      writeStream: (name: string, text: string) => void,
      writeDisplayData: (data: object, update: boolean) => void,
    ): Promise<{ readonly count: number }>;
  };
}

/**
 * tslab sends no `error` message and answers `abort` to everything for 200 ms after a failure. Here a
 * failed cell is told as the protocol has it, and only cells that were queued behind it are aborted.
 */
function runInTurn(failureOf: () => CellError): void {
  const { ZmqServer } = require("./dist/jupyter.js") as {
    ZmqServer: { prototype: { handleExecute(socket: unknown, message: Message): Promise<void> } };
  };
  const inTurn = takeTurns();
  ZmqServer.prototype.handleExecute = async function (this: Server, socket, message) {
    const send = (to: unknown, type: string, content: object, metadata: object = {}) => {
      const reply = message.createReply();
      reply.header.msg_type = type;
      reply.content = content;
      reply.metadata = metadata;
      reply.signAndSend(this.connInfo.key, to);
    };
    const run = async () => {
      try {
        const { code } = message.content;
        const { count } = await this.handler.handleExecuteImpl(
          { ...message.content, code: answerAsTyped(code) },
          (name, text) => send(this.iopub, "stream", { name, text }),
          (data, update) => send(this.iopub, update ? "update_display_data" : "display_data", data),
        );
        return { status: "ok", execution_count: count, payload: [], user_expressions: {} };
      } catch (failed) {
        const { count } = failed as { readonly count?: unknown };
        // a fault of the kernel itself is told too: without an answer a front end would wait for ever
        const { line, ...error } = typeof count === "number" ? failureOf() : faultOf(failed);
        send(this.iopub, "error", error, line === undefined ? {} : { line });
        return { status: "error", execution_count: count, ...error };
      }
    };
    const reply = await inTurn(run, message.content.stop_on_error !== false);
    send(socket, "execute_reply", reply === "aborted" ? { status: "aborted" } : reply);
  };
}
