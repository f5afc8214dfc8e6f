// Loaded into the server under measurement with --require. At each message from the parent process it collects garbage in every
// thread and answers with the bytes that each has then in use: its heap and array buffers, WebAssembly's memory among them.

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
  // A thread that has ended answers nothing, and uses no memory: before a question is put to it, or while it waits.
  const ended = new Set();
  session.on("NodeWorker.detachedFromWorker", ({ params }) => {
    ended.add(params.sessionId);
    for (const [question, resolve] of waiting) {
      if (question.startsWith(`${params.sessionId} `)) resolve(undefined);
    }
  });
  const post = (method, params) =>
    new Promise((resolve, reject) =>
      session.post(method, params, (error, result) => (error ? reject(error) : resolve(result))),
    );
  let ids = 0;
  const postTo = (sessionId) => async (method, params) => {
    if (ended.has(sessionId)) return undefined;
    ids++;
    const answer = new Promise((resolve) => waiting.set(`${sessionId} ${ids}`, resolve));
    const message = JSON.stringify({ id: ids, method, params });
    post("NodeWorker.sendMessageToWorker", { sessionId, message }).catch(waiting.get(`${sessionId} ${ids}`));
    return answer;
  };
  await post("NodeWorker.enable", { waitForDebuggerOnStart: false });
  const bytes = [];
  for (const ask of [post, ...workers.map(postTo)]) {
    // Twice: objects that a finalizer lets go of are collected the next time.
    await ask("HeapProfiler.collectGarbage");
    await ask("HeapProfiler.collectGarbage");
    const answer = await ask("Runtime.evaluate", {
      expression: "(({ heapUsed, external }) => heapUsed + external)(process.memoryUsage())",
    });
    bytes.push(answer?.result?.value ?? 0);
  }
  session.disconnect();
  process.send(bytes);
});
// The channel must not keep the server alive.
process.channel?.unref();
