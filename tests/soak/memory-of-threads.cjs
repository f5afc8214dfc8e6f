// Loaded into the server under measurement with --require. At each message from the parent process it collects garbage in every
// thread and answers with the bytes that are then in use: heaps and array buffers, WebAssembly's memory among them.

const { Session } = require("node:inspector");

process.on("message", async () => {
  const session = new Session();
  session.connect();
  const workers = [];
  session.on("NodeWorker.attachedToWorker", ({ params }) => workers.push(params.sessionId));
  const waiting = new Map();
  session.on("NodeWorker.receivedMessageFromWorker", ({ params }) => {
    const { id, result } = JSON.parse(params.message);
    waiting.get(`${params.sessionId} ${id}`)?.(result);
  });
  const post = (method, params) =>
    new Promise((resolve, reject) =>
      session.post(method, params, (error, result) => (error ? reject(error) : resolve(result))),
    );
  let ids = 0;
  const postTo = (sessionId) => (method, params) =>
    new Promise((resolve) => {
      ids++;
      waiting.set(`${sessionId} ${ids}`, resolve);
      // A worker that has ended meanwhile uses no memory.
      post("NodeWorker.sendMessageToWorker", {
        sessionId,
        message: JSON.stringify({ id: ids, method, params }),
      }).catch(() => resolve(undefined));
    });
  await post("NodeWorker.enable", { waitForDebuggerOnStart: false });
  let bytes = 0;
  for (const ask of [post, ...workers.map(postTo)]) {
    // Twice: objects that a finalizer lets go of are collected the next time.
    await ask("HeapProfiler.collectGarbage");
    await ask("HeapProfiler.collectGarbage");
    const answer = await ask("Runtime.evaluate", {
      expression: "(({ heapUsed, external }) => heapUsed + external)(process.memoryUsage())",
    });
    bytes += answer?.result?.value ?? 0;
  }
  session.disconnect();
  process.send({ bytes, threads: workers.length + 1 });
});
// The channel must not keep the server alive.
process.channel?.unref();
