// The start page: what is done, and what is next, from this browser's own store.
import { keepFiles, page } from "./python.js";

const has = name => { try { return localStorage.getItem(`kitchen/${name}`); } catch { return null; } };
let next = "";
for (const [name, of] of Object.entries(page.sets)) {
  const [there] = (has(`${name}/there`) ?? "0").split("/");
  const words = [];
  if (has(`read/${name}`)) words.push("Lesson read.");
  if (Number(there)) words.push(`Set: ${there} of ${of} answers are there.`);
  if (has(`${name}/saved`)) words.push(`Saved: hand in ${name}.ipynb.`);
  document.querySelector(`[data-state="${name}"]`).textContent = words.join(" ");
  if (!next && !has(`${name}/saved`)) next = name;
}
if (next) {
  const title = document.querySelector(`[data-state="${next}"]`).parentElement.querySelector("h2").textContent;
  document.getElementById("next").textContent = `Next: ${title}.`;
}
keepFiles();
