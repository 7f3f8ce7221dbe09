// A photo that goes along with a set, once its cook has said so. The page draws a small copy of its
// dots, which holds no place and no time; Python measures the photo where it can.
const MOST_BYTES = 200_000;
const WIDTHS = [1200, 900, 600, 400];

async function smallCopy(file) {
  const picture = await createImageBitmap(file);
  for (const width of WIDTHS) {
    const share = Math.min(1, width / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(share * picture.width);
    canvas.height = Math.round(share * picture.height);
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    const copy = await new Promise(done => canvas.toBlob(done, "image/jpeg", 0.75));
    if (copy.size <= MOST_BYTES) return copy;
  }
  throw new Error("no small copy");
}

const bytesOf = async blob => new Uint8Array(await blob.arrayBuffer());

export function photoFields(ask, changed) {
  const groups = [...document.querySelectorAll("[data-photo]")];
  const part = (group, selector) => group.querySelector(selector);

  function show(photos, said) {
    for (const group of groups) {
      const { picture, words } = photos[group.dataset.photo] ?? {};
      const image = part(group, "img");
      image.hidden = !picture;
      if (picture) image.src = `data:image/jpeg;base64,${picture}`;
      else image.removeAttribute("src");
      if (picture) part(group, "[type=checkbox]").checked = true;
      part(group, "[data-asked]").hidden = !part(group, "[type=checkbox]").checked;
      part(group, ".words").textContent = said ?? words ?? "";
    }
  }

  async function send(group, files) {
    if (document.documentElement.dataset.ready !== "yes")
      return void (part(group, ".words").textContent = "One moment: the kitchen is still warming up. Then choose it again.");
    const lines = [...group.querySelectorAll("[data-line]")].map(each => each.value);
    const heard = await ask({ do: "photo", question: group.dataset.photo, lines }, files);
    if (heard.trouble) return void (part(group, ".words").textContent = heard.trouble);
    show(heard.photos, heard.said);
    await changed();
  }

  for (const group of groups) {
    const may = part(group, "[type=checkbox]");
    may.addEventListener("change", () => {
      part(group, "[data-asked]").hidden = !may.checked;
      if (!may.checked) send(group, []);
    });
    part(group, "[type=file]").addEventListener("change", async event => {
      const [file] = event.target.files;
      event.target.value = "";
      if (!file || !may.checked) return;
      part(group, ".words").textContent = "The photo is looked at.";
      let small;
      try { small = await smallCopy(file); } catch {
        part(group, ".words").textContent = "This file cannot be read as a picture. Send the photo again, as JPEG.";
        return;
      }
      await send(group, [await bytesOf(file), await bytesOf(small)]);
    });
  }
  return show;
}
