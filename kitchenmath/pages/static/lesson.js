// A lesson's page: its cells run in order, and its panels talk with Python.
import { page, startPython } from "./python.js";

const { HTMLManager } = await new Promise(done => requirejs(["@jupyter-widgets/html-manager"], done));
const manager = new HTMLManager({ loader: name => Promise.reject(new Error(`no such panel: ${name}`)) });
const heard = new Map(); // what to call when Python speaks to a panel

function told(message, buffers = []) {
  const views = buffers.map(each => new DataView(each.buffer, each.byteOffset, each.byteLength));
  const content = { comm_id: message.comm_id, data: message.data, target_name: message.target_name };
  const wrapped = { content, metadata: message.metadata, buffers: views };
  if (message.type === "comm_open") manager.handle_comm_open(commOf(message), wrapped);
  else heard.get(message.comm_id)?.[message.type]?.(wrapped);
}

function commOf({ comm_id, target_name }) {
  const calls = {};
  heard.set(comm_id, calls);
  return {
    comm_id, target_name,
    on_msg: call => { calls.comm_msg = call; },
    on_close: call => { calls.comm_close = call; },
    close: () => heard.delete(comm_id),
    send(data, callbacks, metadata, buffers = []) {
      ask({ do: "tell", comm_id, data }, buffers.map(each => new Uint8Array(each.buffer ?? each)))
        .then(() => callbacks?.iopub?.status?.({ content: { execution_state: "idle" } }));
      return comm_id;
    },
  };
}

async function put(place, shown) {
  if (shown.panel) {
    const model = await manager.get_model(shown.panel);
    return manager.display_view(manager.create_view(model), place);
  }
  const element = document.createElement(shown.picture ? "img" : shown.html ? "div" : "pre");
  if (shown.picture) Object.assign(element, { src: shown.picture, alt: "" });
  else if (shown.html) element.innerHTML = shown.html;
  else element.textContent = shown.text;
  place.append(element);
}

const ask = startPython(page.python ?? { names: ["kitchenmath", "ipywidgets", "matplotlib"], files: page.files }, told);
const ready = document.getElementById("ready");
for (const [cell, source] of Object.entries(page.sources)) {
  const { shown, trouble, python } = await ask({ do: "run", source });
  const place = document.querySelector(`[data-cell="${cell}"]`);
  if (trouble) {
    console.error(cell, python ?? trouble);
    ready.textContent = `One part did not start: ${trouble}`;
    continue;
  }
  if (!shown.length) continue;
  place.replaceChildren();
  for (const each of shown) await put(place, each);
  if (shown.some(each => each.panel) && !document.documentElement.dataset.first) {
    document.documentElement.dataset.first = "yes";
    ready.textContent = "The first panel can be moved. The others follow.";
  }
}
if (!ready.textContent.startsWith("One part")) ready.textContent = "All panels can be moved.";
document.documentElement.dataset.ready = "yes";
const watch = new IntersectionObserver(([end]) => end.isIntersecting && localStorage.setItem(`kitchen/read/${page.name}`, "yes"));
watch.observe(document.getElementById("end"));
