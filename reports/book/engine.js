// The program runs beside the page, in a worker, so that the page is never stuck while it thinks.

const waiting = new Map();
let last = 0;
let worker = null;

/** Starts the program; the promise ends when it can answer, or fails with the reason why it cannot. */
export function start() {
  return new Promise((ready, failed) => {
    try {
      worker = new Worker("worker.js", { type: "module" });
    } catch (fault) {
      failed(fault);
      return;
    }
    worker.onerror = event => failed(new Error(event.message || "the program did not load"));
    worker.onmessage = ({ data }) => {
      if (data.ready) ready();
      else if (data.id === undefined) failed(new Error(data.fault));
      else {
        const { done, fail } = waiting.get(data.id);
        waiting.delete(data.id);
        if (data.fault === undefined) done(JSON.parse(data.answer));
        else fail(new Error(data.fault));
      }
    };
  });
}

/** What the program answers to one request. */
export function tell(request) {
  return new Promise((done, fail) => {
    const id = ++last;
    waiting.set(id, { done, fail });
    worker.postMessage({ id, request: JSON.stringify(request) });
  });
}
