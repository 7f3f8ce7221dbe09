// Python in a worker: it hands every message of the page to the kit's own Talk.
import { loadPyodide } from "./python/pyodide.mjs";

const TALK = `
import json
from pyodide.ffi import to_js
from kitchenmath.pages.talk import Talk

def talk(post):
    page = Talk(lambda message, buffers: post(json.dumps(message), to_js(buffers)))
    return lambda asked, buffers: page.hear(asked, [bytes(each.to_py()) for each in buffers])
talk
`;
let hear;

// A folder whose files stay in this browser: what was measured in one lesson is there in the next.
async function keepFolder(FS, folder) {
  FS.mkdirTree(folder);
  FS.mount(FS.filesystems.IDBFS, { autoPersist: true }, folder);
  await new Promise(done => FS.syncfs(true, trouble => done(trouble && console.info("Nothing is kept here:", trouble))));
}

async function start(packages) {
  const folder = new URL("./python/", import.meta.url).href;
  const env = { HOME: "/home/pyodide", KITCHEN_KEPT: "/kept" };
  const python = await loadPyodide({ indexURL: folder, packages: packages.names, env });
  await keepFolder(python.FS, env.KITCHEN_KEPT);
  for (const [name, address] of Object.entries(packages.files ?? {})) {
    const raw = await fetch(new URL(address, import.meta.url));
    python.FS.mkdirTree(name.replace(/\/[^/]*$/, ""));
    python.FS.writeFile(name, new Uint8Array(await raw.arrayBuffer()));
  }
  const talk = python.runPython(TALK);
  return talk((told, buffers) => self.postMessage({ told, buffers }));
}

self.onmessage = async ({ data }) => {
  if (data.packages) return void (hear = start(data.packages));
  try {
    const answer = (await hear)(data.asked, data.buffers ?? []);
    self.postMessage({ id: data.id, heard: answer });
  } catch (error) {
    self.postMessage({ id: data.id, trouble: `Python did not start: ${error.message}` });
  }
};
