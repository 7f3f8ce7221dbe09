// A set's page: what is typed goes into the browser's store and to Python; what Python says is shown.
import { drawBoard, drawLog, fillTable } from "./drawing.js";
import { photoFields } from "./photo.js";
import { page, startPython } from "./python.js";

const { set_id: set, fields } = page;
const key = `kitchen/${set}`;
const find = (selector, within = document) => within.querySelector(selector);
const all = (selector, within = document) => [...within.querySelectorAll(selector)];
const ask = startPython({ names: ["kitchenmath"] });
let kept = { typed: page.home?.typed ?? {}, notebook: null };
let ready = false;
let written = "";
let turn = 0;
const showPhotos = photoFields(ask, keepPhoto);

function restore() {
  if (!page.home) try {
    kept = JSON.parse(localStorage.getItem(key)) ?? kept;
    kept.typed.student ??= localStorage.getItem("kitchen/student") ?? "";
  } catch { /* a private window may refuse; then nothing is kept, and the page says so */ }
  show(kept.typed);
}

function keep() {
  if (!page.home) try {
    localStorage.setItem(key, JSON.stringify(kept));
    if (kept.typed.student) localStorage.setItem("kitchen/student", kept.typed.student);
  } catch {
    say("This browser keeps nothing here. Save your hand-in before you close the page.");
  }
}

function read() {
  const typed = { ...kept.typed };
  for (const field of all("[data-field]")) typed[field.dataset.field] = field.value;
  for (const group of all("[data-readings]")) {
    const values = all("input", group).map(each => each.value.trim()).filter(Boolean);
    const unit = values.some(each => /[a-z"″]/i.test(each)) ? "" : " mm";
    typed[group.dataset.readings] = values.length ? values.join("; ") + unit : "";
  }
  for (const plan of all("[data-plan]")) {
    const lines = all("[data-task]", plan).map(task => `${task.dataset.task} ${find("input", task).value}`.trim());
    typed[plan.dataset.plan] = all("input", plan).some(each => each.value) ? lines.join("\n") : "";
  }
  return typed;
}

function show(typed) {
  for (const field of all("[data-field]")) field.value = typed[field.dataset.field] ?? "";
  for (const group of all("[data-readings]")) {
    const values = (typed[group.dataset.readings] ?? "").replace(/ mm$/, "").split(/;\s*/).filter(Boolean);
    while (all("input", group).length < values.length) oneMore(group);
    all("input", group).forEach((field, place) => (field.value = values[place] ?? ""));
  }
  for (const plan of all("[data-plan]")) {
    const lines = (typed[plan.dataset.plan] ?? "").split("\n");
    for (const task of all("[data-task]", plan)) {
      const line = lines.find(each => each.startsWith(task.dataset.task)) ?? "";
      find("input", task).value = (/(\d\d:\d\d)$/.exec(line) ?? [""])[0];
    }
  }
}

function oneMore(group) {
  const field = find("input", group).cloneNode();
  field.value = "";
  field.setAttribute("aria-label", `reading ${all("input", group).length + 1}`);
  group.append(field);
}

async function change() {
  kept.typed = read();
  keep();
  if (!ready) return;
  const mine = ++turn;
  const seen = await ask({ do: "show", typed: kept.typed });
  if (mine === turn) tell(seen);
  if (page.home && JSON.stringify(kept.typed) !== written) await write();
}

function tell(seen) {
  if (seen.trouble) return say(seen.trouble);
  sayOf("student", seen.student.number ? "there" : "empty", seen.student.number ? `Student ${seen.student.number}.` : seen.student.sentence);
  if (seen.code) sayOf("code", ...seen.code);
  for (const [question, rows] of Object.entries(seen.given)) {
    const list = find(`[data-given="${question}"]`);
    if (list && rows.length) list.replaceChildren(...rows.flatMap(([label, value]) => [made("dt", label), made("dd", value)]));
  }
  for (const [question, [state, sentence]] of Object.entries(seen.said))
    sayOf(question, state, state === "empty" || fields[question] === "written" ? "" : sentence[0].toUpperCase() + sentence.slice(1));
  for (const place of all("[data-mine]")) place.textContent = seen.mine;
  if (seen.log) drawLog(find("[data-log]"), seen.log);
  if (seen.board) {
    fillTable(all("[data-task]"), seen.board);
    drawBoard(find("[data-board]"), find("[data-clashes]"), seen.board);
  }
  const left = Object.keys(fields).filter(question => seen.said[question][0] !== "there").map(each => each.slice(1));
  const whose = !seen.student.number ? "Your student number is missing. " : seen.code?.[0] === "empty" ? "Your code is missing. " : "";
  say(`${whose}${seen.there} of ${seen.of} answers are there${left.length ? `. Open: ${left.join(", ")}` : ". Save your hand-in"}.`);
  try { localStorage.setItem(`${key}/there`, `${seen.there}/${seen.of}`); } catch { /* as above */ }
}

const say = sentence => { find("[data-bar]").textContent = sentence; };

function sayOf(question, state, sentence) {
  const place = find(`[data-said="${question}"]`);
  if (place.textContent === sentence && place.dataset.is === state) return;
  place.dataset.is = sentence ? state : "";
  place.textContent = sentence;
}

function made(tag, text) {
  const element = document.createElement(tag);
  element.textContent = text;
  return element;
}

// On one's own computer what is typed goes into the set's notebook, which is the file to hand in.
async function write() {
  const typed = JSON.stringify(kept.typed);
  const { said, trouble } = await ask({ do: "keep", typed: kept.typed });
  if (!trouble) written = typed;
  if (trouble || said.includes("kept as")) say(trouble ?? said);
  return trouble ?? said;
}

// A photo lies in the notebook itself: beside this computer's answers, or in the browser's store.
async function keepPhoto() {
  kept.typed = read();
  if (page.home) return write();
  const saved = await ask({ do: "save", typed: kept.typed });
  if (saved.trouble) return say(saved.trouble);
  kept.notebook = saved.notebook;
  keep();
}

async function save() {
  if (!ready) return say("One moment: the kitchen is still warming up.");
  kept.typed = read();
  if (page.home) return say(await write());
  const { notebook, trouble } = await ask({ do: "save", typed: kept.typed });
  if (trouble) return say(trouble);
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([notebook], { type: "application/json" }));
  link.download = `${set}.ipynb`;
  link.click();
  say(`Saved as ${set}.ipynb, in your downloads. Hand in that file.`);
  try { localStorage.setItem(`${key}/saved`, JSON.stringify(kept.typed)); keep(); } catch { /* as above */ }
}

async function open(event) {
  const [file] = event.target.files;
  event.target.value = "";
  if (!file || !ready) return;
  const notebook = await file.text();
  const opened = await ask({ do: "open", notebook, set_id: set });
  if (opened.trouble) return say(opened.trouble);
  const other = kept.typed.student && opened.typed.student && kept.typed.student.trim().toUpperCase() !== opened.typed.student.trim().toUpperCase();
  if (other && !confirm(`This hand-in is of student ${opened.typed.student}. Go on with it? What is typed here is replaced.`)) {
    await ask({ do: "open", notebook: kept.notebook ?? released });
    return;
  }
  kept = { typed: opened.typed, notebook };
  show(opened.typed);
  showPhotos(opened.photos);
  await change();
}

for (const name of ["change", "focusout"]) document.addEventListener(name, event => event.target.matches("input:not([type=file]), textarea") && change());
let soon;
document.addEventListener("input", event => {
  const group = event.target.closest("[data-readings]");
  if (group && event.target === group.lastElementChild && event.target.value) oneMore(group);
  clearTimeout(soon);
  soon = setTimeout(change, event.target.matches("textarea, [type=time]") ? 250 : 1500);
});
addEventListener("pagehide", () => { kept.typed = read(); keep(); });
document.addEventListener("visibilitychange", () => { if (document.hidden) { kept.typed = read(); keep(); } });
find("#save").addEventListener("click", save);
find("#open").addEventListener("change", open);

restore();
const released = await (await fetch(`notebooks/${set}.ipynb`)).text();
const opened = await ask({ do: "open", notebook: kept.notebook ?? released });
if (opened.trouble) say(opened.trouble);
else {
  ready = true;
  showPhotos(opened.photos);
  written = JSON.stringify(kept.typed);
  await change();
  document.documentElement.dataset.ready = "yes";
}
