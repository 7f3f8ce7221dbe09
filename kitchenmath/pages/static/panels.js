// Panels: what Python's widgets say of themselves, shown with a page's own controls.
// Eleven kinds are all that the kit's panels have (a test looks). So a phone needs no library of
// megabytes that has to compile code, and a slider is the device's own, made for a thumb.

const element = (tag, name = "", more = {}) => Object.assign(document.createElement(tag), { className: name, ...more });
const wanted = reference => reference.slice("IPY_MODEL_".length);
const KINDS = {
  VBox: box, HBox: box, HTML: words, Button: button, Text: line, Textarea: line, Checkbox: tick,
  Dropdown: list, IntSlider: slider, FloatSlider: slider, Image: image, FileUpload: file,
};
const WRAPS = { VBox: "column nowrap", HBox: "row nowrap" };

export function panels(send) {
  const models = new Map(); // by id: its state, and the element that shows it

  function told({ type, comm_id, data }, buffers = []) {
    if (type === "comm_open") {
      const model = { id: comm_id, kind: data.state._model_name.replace(/Model$/, ""), state: {}, show: () => {} };
      models.set(comm_id, model);
      take(model, data, buffers);
    } else if (type === "comm_close") models.delete(comm_id);
    else if (data.method === "update" && models.has(comm_id)) take(models.get(comm_id), data, buffers);
    else if (data.content?.do === "focus") models.get(comm_id).control?.focus();
  }

  function take(model, { state, buffer_paths = [] }, buffers) {
    buffer_paths.forEach((path, place) => { state[path[0]] = buffers[place]; });
    Object.assign(model.state, state);
    model.show(state);
    if (model.kind === "Layout") for (const other of models.values()) if (other.state.layout === `IPY_MODEL_${model.id}`) lay(other);
  }

  // Of a slider's many values only the last waits while Python is at work on one.
  async function change(model, state, buffer_paths = [], buffers = []) {
    Object.assign(model.state, buffer_paths.length ? {} : state);
    model.next = { state, buffer_paths, buffers };
    if (model.busy) return;
    model.busy = true;
    while (model.next) {
      const { buffers, ...data } = model.next;
      model.next = null;
      await send(model.id, { method: "update", ...data }, buffers);
    }
    model.busy = false;
  }

  const event = (model, name) => send(model.id, { method: "custom", content: { event: name } });

  function lay(model) {
    if (!model.element) return;
    const { style } = model.element;
    const own = models.get(wanted(model.state.layout)).state;
    for (const [name, value] of Object.entries(own)) if (!name.startsWith("_")) style.setProperty(name.replaceAll("_", "-"), value ?? "");
    style.flexFlow = own.flex_flow ?? WRAPS[model.kind] ?? "";
  }

  function view(id) {
    const model = models.get(id);
    if (!model.element) {
      model.element = KINDS[model.kind](model, { change, event, view });
      model.element.classList.add(...(model.state._dom_classes ?? []));
      model.show(model.state);
      lay(model);
    }
    return model.element;
  }

  return { told, view };
}

function box(model, { view }) {
  const made = element("div", "box");
  model.show = ({ children }) => children && made.replaceChildren(...children.map(each => view(wanted(each))));
  return made;
}

function words(model) {
  const made = element("div", "words");
  model.show = ({ value }) => { if (value !== undefined) made.innerHTML = value; };
  return made;
}

function button(model, { event }) {
  const made = model.control = element("button", "", { type: "button" });
  made.onclick = () => event(model, "click");
  model.show = ({ description, disabled }) => {
    if (description !== undefined) made.textContent = description;
    if (disabled !== undefined) made.disabled = disabled;
  };
  return made;
}

// A control with its words before it, which stay its name for whoever does not see them.
function labelled(model, control, ...more) {
  const name = element("span", "name", { textContent: model.state.description });
  const made = element("label", "control");
  made.append(name, control, ...more);
  name.hidden = !model.state.description;
  model.control = control;
  return made;
}

function line(model, { change, event }) {
  const control = element(model.kind === "Textarea" ? "textarea" : "input", "", { value: model.state.value, autocomplete: "off", spellcheck: false });
  control.placeholder = model.state.placeholder ?? "";
  if (model.state.rows) control.rows = model.state.rows;
  if (!model.state.description) control.setAttribute("aria-label", control.placeholder || "Your words");
  const say = () => control.value !== model.state.value && change(model, { value: control.value });
  control.addEventListener(model.state.continuous_update ? "input" : "change", say);
  if (control.tagName === "INPUT") control.addEventListener("keydown", async key => {
    if (key.key !== "Enter") return;
    await say();
    event(model, "submit");
  });
  model.show = ({ value, disabled }) => {
    if (value !== undefined && control.value !== value) control.value = value;
    if (disabled !== undefined) control.disabled = disabled;
  };
  return labelled(model, control);
}

function tick(model, { change }) {
  const control = element("input", "", { type: "checkbox" });
  control.onchange = () => change(model, { value: control.checked });
  model.show = ({ value }) => { if (value !== undefined) control.checked = value; };
  return labelled(model, control);
}

function list(model, { change }) {
  const control = element("select");
  control.onchange = () => change(model, { index: control.selectedIndex });
  model.show = ({ _options_labels, index }) => {
    if (_options_labels) control.replaceChildren(..._options_labels.map(each => element("option", "", { textContent: each })));
    if (index !== undefined) control.selectedIndex = index ?? -1;
  };
  return labelled(model, control);
}

function slider(model, { change }) {
  const control = element("input", "", { type: "range" });
  const shown = element("output", "");
  const places = Number(/\.(\d)f/.exec(model.state.readout_format ?? "")?.[1] ?? 0);
  const read = value => { shown.textContent = Number(value).toFixed(places); };
  control.oninput = () => {
    read(control.value);
    change(model, { value: Number(control.value) });
  };
  model.show = state => {
    for (const name of ["min", "max", "step"]) if (name in state) control[name] = state[name];
    if ("value" in state && !model.busy) { control.value = state.value; read(state.value); }
    if ("disabled" in state) control.disabled = state.disabled;
  };
  const made = labelled(model, control, shown);
  control.setAttribute("aria-label", model.state.description);
  return made;
}

function image(model) {
  const made = element("img", "", { alt: "" });
  model.show = ({ value }) => {
    if (!value) return;
    URL.revokeObjectURL(made.src);
    made.src = URL.createObjectURL(new Blob([value], { type: `image/${model.state.format}` }));
  };
  return made;
}

function file(model, { change }) {
  const control = element("input", "", { type: "file", accept: model.state.accept, multiple: model.state.multiple });
  const chosen = element("span", "quiet");
  control.onchange = async () => {
    const files = [...control.files];
    const buffers = await Promise.all(files.map(async each => new Uint8Array(await each.arrayBuffer())));
    chosen.textContent = files.map(each => each.name).join(", ");
    const value = files.map(({ name, type, size, lastModified }) => ({ name, type, size, last_modified: lastModified }));
    change(model, { value }, files.map((_, place) => ["value", place, "content"]), buffers);
  };
  const made = element("label", "button");
  made.append(model.state.description, control);
  const whole = element("div", "control");
  whole.append(made, chosen);
  model.control = control;
  return whole;
}
