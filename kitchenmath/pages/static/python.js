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

export { keepFiles, page };
export const startPython = (packages, told = () => {}) => (made ??= startWorker(packages, told));
