// A lesson's page: its cells run in order, and its panels talk with Python.
import { panels } from "./panels.js";
import { page, remember, startPython } from "./python.js";

const cellOf = new Map(); // by panel, where it stands
const shownHere = panels(async (comm_id, data, buffers) => {
  const { again } = await ask({ do: "tell", comm_id, data }, buffers);
  if (again) remember(`again/${page.name}`, again.map(each => cellOf.get(each)).join(), ask);
});
const ask = startPython({ names: ["kitchenmath", "ipywidgets", "matplotlib"], files: page.files }, shownHere.told);
const ready = document.getElementById("ready");

function put(shown) {
  if (shown.panel) return shownHere.view(shown.panel);
  const element = document.createElement(shown.picture ? "img" : shown.html ? "div" : "pre");
  if (shown.picture) Object.assign(element, { src: shown.picture, alt: "" });
  else if (shown.html) element.innerHTML = shown.html;
  else element.textContent = shown.text;
  return element;
}

for (const [cell, source] of Object.entries(page.sources)) {
  const { shown, trouble, python } = await ask({ do: "run", source });
  const place = document.querySelector(`[data-cell="${cell}"]`);
  if (trouble) {
    console.error(cell, python ?? trouble);
    ready.textContent = `One part did not start: ${trouble}`;
    continue;
  }
  if (!shown.length) continue;
  place.replaceChildren(...shown.map(put));
  for (const each of shown) if (each.panel) cellOf.set(each.panel, cell);
  if (shown.some(each => each.panel) && !document.documentElement.dataset.first) {
    document.documentElement.dataset.first = "yes";
    ready.textContent = "The first panel can be moved. The others follow.";
  }
}
if (!ready.textContent.startsWith("One part")) ready.textContent = "All panels can be moved.";
document.documentElement.dataset.ready = "yes";
const watch = new IntersectionObserver(([end]) => end.isIntersecting && remember(`read/${page.name}`, "yes", ask));
watch.observe(document.getElementById("end"));
