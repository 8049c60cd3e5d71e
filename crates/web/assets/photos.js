// Chosen photographs: previews, removing, too large ones, and giving kept ones back to the form.
// The file input itself stays the one place where the photographs are, so that a plain post by
// the browser carries the same ones.
import { showMistakes } from "./mistakes.js";
import { make, word } from "./words.js";

export const photographInputs = (form) => [...form.querySelectorAll('input[type="file"][data-photo]')];

// Copies, because a file of the camera may be moved or changed by the phone before it is sent.
// `chosen` is a list of [field, file].
export async function copies(chosen) {
  const files = [];
  for (const [field, file] of chosen) {
    const blob = new Blob([await file.arrayBuffer()], { type: file.type });
    files.push({ field, name: file.name, type: file.type, blob });
  }
  return files;
}

function setFiles(input, files) {
  const holder = new DataTransfer();
  for (const file of files) holder.items.add(file);
  input.files = holder.files;
  chosenBefore.set(input, files);
}

// A second visit to the camera replaces the first choice in the browser; here it adds to it.
const chosenBefore = new WeakMap();
const previewLists = new WeakMap();
const pictureUrls = new WeakMap();

export function pictureUrl(file) {
  if (!pictureUrls.has(file)) pictureUrls.set(file, URL.createObjectURL(file));
  return pictureUrls.get(file);
}

function letGo(file) {
  if (pictureUrls.has(file)) URL.revokeObjectURL(pictureUrls.get(file));
  pictureUrls.delete(file);
}

const limitOf = (input) => Number(input.dataset.maxBytes) || Infinity;
const megabytes = (bytes) =>
  new Intl.NumberFormat(document.documentElement.lang || undefined, {
    maximumFractionDigits: 1,
  }).format(bytes / 1e6);

export function tooLarge(form) {
  return photographInputs(form).flatMap((input) =>
    [...input.files]
      .filter((file) => file.size > limitOf(input))
      .map((file) => ({
        field: input.name,
        message: word("script-photograph-too-large", {
          name: file.name,
          size: megabytes(file.size),
          limit: megabytes(limitOf(input)),
        }),
      })),
  );
}

function preview(input, file, number) {
  const picture = make("img", { src: pictureUrl(file), alt: word("script-photograph-n", { number }) });
  const remove = make("button", { type: "button", text: word("script-remove-photograph", { number }) });
  remove.addEventListener("click", () => {
    setFiles(input, [...input.files].filter((other) => other !== file));
    letGo(file);
    show(input);
    tell(input, false);
    input.focus();
  });
  const item = make("li", {}, picture, remove);
  if (file.size > limitOf(input)) item.classList.add("too-large");
  return item;
}

function show(input) {
  const files = [...input.files];
  previewLists.get(input)?.replaceChildren(
    ...files.map((file, index) => preview(input, file, index + 1)),
  );
}

function tell(input, restored) {
  input.form.dispatchEvent(new CustomEvent("photographs", { detail: { restored, input } }));
}

export function givePhotographs(form, kept) {
  for (const input of photographInputs(form)) {
    const files = kept
      .filter((file) => file.field === input.name)
      .map((file) => new File([file.blob], file.name, { type: file.type }));
    if (!files.length) continue;
    setFiles(input, files);
    show(input);
    tell(input, true);
  }
}

export function startPhotographs(input) {
  if (!input.form) return;
  const list = make("ul", { class: "photographs" });
  (input.closest("[data-shoots]") ?? input).after(list);
  previewLists.set(input, list);
  const add = (added) => {
    const before = chosenBefore.get(input) ?? [];
    setFiles(input, input.multiple && added.length ? [...before, ...added] : added);
    show(input);
    const mistakes = tooLarge(input.form);
    if (mistakes.length) showMistakes(input.form, mistakes);
    tell(input, false);
  };
  input.addEventListener("change", () => add([...input.files]));
  // What comes from the gallery joins what the camera took, so that there is one list of photographs.
  const gallery = input.form.querySelector("input[data-photo-too]");
  gallery?.addEventListener("change", () => {
    const added = [...gallery.files];
    gallery.value = "";
    if (added.length) add(added);
  });
  // Some browsers keep the choice over a reload by themselves.
  if (input.files.length) {
    setFiles(input, [...input.files]);
    show(input);
  }
}
