// Compiles archives of Python modules with the very Python that the browser runs, so that a phone need not do it.
// node compiled.mjs RUNTIME ARCHIVE=FOLDER...: each archive is written anew in its place, modules as .pyc; FOLDER is
// where its modules will stand. Docstrings and line numbers stay at home: they are half of what would travel.
import { readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";

const [runtime, ...archives] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(resolve(runtime, "pyodide.mjs")));
const python = await loadPyodide({ indexURL: `${resolve(runtime)}/` });
const compiled = python.runPython(`
import importlib.util, io, marshal, zipfile

def bare(code):
    """A code object, and those in it, without its line numbers."""
    inner = (bare(c) if hasattr(c, "co_linetable") else c for c in code.co_consts)
    return code.replace(co_linetable=b"", co_consts=tuple(inner))

def compiled(held, folder):
    """An archive with its modules compiled; a file of another kind stays as it is."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(held.to_py())) as old, zipfile.ZipFile(out, "w") as new:
        for name in sorted(old.namelist()):
            if name.endswith("/"):
                continue
            content = old.read(name)
            if name.endswith(".py"):
                code = bare(compile(content, f"{folder}/{name}", "exec", dont_inherit=True, optimize=2))
                # not checked against a source, which does not travel
                head = importlib.util.MAGIC_NUMBER + (1).to_bytes(4, "little") + importlib.util.source_hash(content)
                name, content = f"{name}c", head + marshal.dumps(code)
            new.writestr(zipfile.ZipInfo(name, (2026, 1, 1, 0, 0, 0)), content)
    return out.getvalue()
compiled
`);
for (const each of archives) {
  const [file, folder] = each.split("=");
  writeFileSync(file, compiled(new Uint8Array(readFileSync(file)), folder).toJs());
}
