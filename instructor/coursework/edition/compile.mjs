// Compile the modules of zips by the browser's Python itself: node compile.mjs FOLDER
// FOLDER/python holds the runtime, FOLDER/in the zips; FOLDER/out gets them.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const COMPILE = `
import importlib.util, io, warnings, zipfile
from importlib._bootstrap_external import _code_to_hash_pyc
from pyodide.ffi import to_js

warnings.simplefilter("ignore")  # what other people's modules are warned of is not ours to mend

def compiled(raw):
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(raw.to_py())) as old, zipfile.ZipFile(made, "w") as new:
        for entry in old.infolist():
            content = old.read(entry)
            if entry.filename.endswith(".py"):
                code = compile(content, entry.filename, "exec", dont_inherit=True, optimize=2)
                # No time stands in it, only the source's sum, and nobody looks for the source.
                content = bytes(_code_to_hash_pyc(code, importlib.util.source_hash(content), False))
                entry.filename += "c"
            entry.compress_type = zipfile.ZIP_DEFLATED
            new.writestr(entry, content, compresslevel=9)
    return to_js(made.getvalue())
compiled
`;
const folder = process.argv[2];
const place = `${folder}/python/`;
const { loadPyodide } = await import(pathToFileURL(`${place}pyodide.mjs`));
// No chance in the order of a set: the same files give the same bytes.
const python = await loadPyodide({
  indexURL: place,
  env: { PYTHONHASHSEED: "0" },
  args: ["-X", "no_debug_ranges"],
});
const compiled = python.runPython(COMPILE);
for (const name of readdirSync(`${folder}/in`).sort())
  writeFileSync(`${folder}/out/${name}`, compiled(new Uint8Array(readFileSync(`${folder}/in/${name}`))));
