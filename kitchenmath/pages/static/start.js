// The start page: what is done, what is next and what to repeat.
import { keepFiles, page, remembered } from "./python.js";

const stored = name => { try { return localStorage.getItem(`kitchen/${name}`) ?? ""; } catch { return ""; } };
const made = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text, ...more });

// How far a set is: by its file on one's own computer, by what this browser keeps elsewhere.
function stateOf(name) {
  if (page.home) return { ...page.home.sets[name], saved: page.home.sets[name].there > 0 };
  let typed = "";
  try { typed = JSON.stringify(JSON.parse(stored(name)).typed); } catch { /* nothing is kept */ }
  const saved = stored(`${name}/saved`);
  return { there: Number(stored(`${name}/there`).split("/")[0]), saved: saved !== "", changed: saved !== typed, file: `${name}.ipynb` };
}

function inWords({ there, saved, changed, file }, of) {
  if (!there) return "";
  const far = there === of ? "Set: complete" : `Set: ${there} of ${of} answers are there`;
  if (!saved) return `${far}, and not saved yet.`;
  if (changed && !page.home) return `${far}, and changed since it was saved. Save it again.`;
  return `${far}, and saved. ${there === of ? "Hand in" : "The file to hand in is"} ${file}.`;
}

let next = "";
for (const [name, of] of Object.entries(page.sets)) {
  const place = document.querySelector(`[data-state="${name}"]`);
  const card = place.parentElement;
  const title = card.querySelector("h2").textContent.replace(/^\d+\. /, "");
  const called = kind => card.querySelector(`a.${kind}`)?.textContent;
  const state = stateOf(name);
  const read = remembered(`read/${name}`) !== "";
  place.textContent = [read ? "Lesson read." : "", inWords(state, of)].filter(Boolean).join(" ");
  const again = remembered(`again/${name}`).split(",").filter(Boolean);
  if (again.length) {
    const links = again.flatMap((cell, turn) => [" ", made("a", `drill ${turn + 1}`, { href: `lesson-${name}.html#${cell}` })]);
    const line = made("p", "To repeat, because the last answer was not right:", { className: "again" });
    line.append(...links);
    place.after(line);
  }
  if (!next && called("lesson") && !read && !state.there) next = made("a", `${called("lesson")}, ${title}`, { href: `lesson-${name}.html` });
  else if (!next && (state.there < of || !state.saved)) next = made("a", `${called("set")}, ${title}`, { href: `set-${name}.html` });
}
const line = document.getElementById("next");
if (next) line.append("Next: ", next, ".");
else line.textContent = "All sets are complete.";
if (!page.home) keepFiles();
