// Python behind a page: a worker in this browser, or this machine's own server.
// The page only asks and hears; `told` takes what Python says by itself, as panels do.

const page = JSON.parse(document.getElementById("page").textContent);
let made = null;

// A service worker keeps the files. Python is loaded after it has taken over: nothing comes twice.
async function keepFiles() {
  if (!("serviceWorker" in navigator)) return;
  try {
    const had = navigator.serviceWorker.controller;
    const registration = await navigator.serviceWorker.register("keep.js");
    registration.addEventListener("updatefound", () => offer(registration, had));
    offer(registration, had);
    if (!had) {
      const taken = new Promise(done => navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }));
      await Promise.race([taken, new Promise(done => setTimeout(done, 4000))]);
    }
  } catch (error) {
    console.info("This browser keeps no files here:", error.message);
  }
}

function offer(registration, had) {
  const waiting = registration.waiting || registration.installing;
  if (!had || !waiting) return;
  const show = () => {
    const newer = document.getElementById("newer");
    newer.hidden = false;
    newer.querySelector("button").onclick = () => {
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      waiting.postMessage("take over");
    };
  };
  if (waiting.state === "installed") show();
  else waiting.addEventListener("statechange", () => waiting.state === "installed" && show());
}

function startWorker(packages, told) {
  const waits = new Map();
  let last = 0;
  const worker = keepFiles().then(() => {
    const worker = new Worker("worker.mjs", { type: "module" });
    worker.onmessage = ({ data }) => {
      if (data.told) return told(JSON.parse(data.told), data.buffers);
      waits.get(data.id)(data.trouble ? { trouble: data.trouble } : JSON.parse(data.heard));
      waits.delete(data.id);
    };
    worker.postMessage({ packages });
    return worker;
  });
  return async (asked, buffers = []) => {
    const to = await worker;
    return new Promise(done => {
      waits.set(++last, done);
      to.postMessage({ id: last, asked: JSON.stringify(asked), buffers });
    });
  };
}

// This computer's own Python: the same messages through a socket, their bytes as text.
function startSocket(told) {
  const waits = new Map();
  let last = 0;
  const address = new URL("talk", location.href);
  address.protocol = address.protocol.replace("http", "ws");
  const socket = new WebSocket(address);
  const open = new Promise((done, failed) => { socket.onopen = done; socket.onerror = failed; });
  const gone = { trouble: "Python has stopped here. Load this page again to go on; what was saved is there." };
  socket.onclose = () => { for (const answer of waits.values()) answer(gone); };
  socket.onmessage = ({ data }) => {
    const { id, heard, told: message, buffers } = JSON.parse(data);
    if (message) return told(JSON.parse(message), buffers.map(each => Uint8Array.from(atob(each), sign => sign.charCodeAt())));
    waits.get(id)(JSON.parse(heard));
    waits.delete(id);
  };
  return async (asked, buffers = []) => {
    try { await open; } catch { return gone; }
    if (socket.readyState !== WebSocket.OPEN) return gone;
    return new Promise(done => {
      waits.set(++last, done);
      socket.send(JSON.stringify({ id: last, asked: JSON.stringify(asked), buffers: buffers.map(asText) }));
    });
  };
}

function asText(bytes) {
  let text = "";
  for (let place = 0; place < bytes.length; place += 8192) text += String.fromCharCode(...bytes.subarray(place, place + 8192));
  return btoa(text);
}

// What was read and what to repeat: in this browser, or beside the lessons on one's own computer.
export function remembered(name) {
  if (page.home) return page.home.notes[name] ?? "";
  try { return localStorage.getItem(`kitchen/${name}`) ?? ""; } catch { return ""; }
}

export function remember(name, value, ask) {
  if (remembered(name) === value) return;
  if (page.home) { page.home.notes[name] = value; ask({ do: "note", name, value }); return; }
  try { localStorage.setItem(`kitchen/${name}`, value); } catch { /* a private window may refuse */ }
}

export { keepFiles, page };
export const startPython = (packages, told = () => {}) => (made ??= page.home ? startSocket(told) : startWorker(packages, told));
