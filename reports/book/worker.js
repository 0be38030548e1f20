// Runs Python. A request goes in as text and its answer comes out as text; nothing is worked out here.
import { loadPyodide } from "./runtime/pyodide.mjs";

const SITE = "/book";
// The runtime travels packed, so that a host that packs nothing sends no more.
const plain = self.fetch.bind(self);
self.fetch = (what, how) => {
  const address = String(what.url ?? what);
  return address.endsWith(".wasm") ? plain(`${address}.packed`, how).then(unpacked) : plain(what, how);
};

function unpacked(packed) {
  if (!packed.ok) return packed;
  const body = packed.body.pipeThrough(new DecompressionStream("gzip"));
  return new Response(body, { headers: { "Content-Type": "application/wasm" } });
}

async function start() {
  const program = plain("program.zip").then(got => { if (!got.ok) throw new Error("the program is not there"); return got.arrayBuffer(); });
  const lock = await plain("runtime/pyodide-lock.json").then(got => got.text());
  const python = await loadPyodide({ indexURL: new URL("runtime/", self.location).href, lockFileContents: lock, env: { HOME: "/", COLUMNS: "80" } });
  python.unpackArchive(await program, "zip", { extractDir: SITE });
  return python.runPython(`
import sys
sys.path.insert(0, "${SITE}")
from gaugeblock import cli
from gaugeblock.book.face import Book
Book(cli.main).take
`);
}

const ready = start();
ready.then(() => postMessage({ ready: true }), fault => postMessage({ fault: String(fault) }));
self.onmessage = async ({ data }) => {
  try {
    postMessage({ id: data.id, answer: (await ready)(data.request) });
  } catch (fault) {
    postMessage({ id: data.id, fault: String(fault) });
  }
};
