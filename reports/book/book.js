// The page: which part is open, what is in the box, and what the program said last.
import { add, button, el } from "./dom.js";
import * as asking from "./ask.js";
import * as engine from "./engine.js";
import * as kept from "./kept.js";

const view = document.getElementById("view");
const speaks = document.getElementById("speaks");
const box = document.getElementById("box");
const words = document.getElementById("words");
const units = document.getElementById("units");
const links = [...document.querySelectorAll("nav a")];
let asked = null;
let turn = 0;

/** Shows one thing, from its top, and tells a screen reader. */
export function show(content, { focus = true, title = "" } = {}) {
  view.replaceChildren();
  add(view, [content]);
  view.scrollTop = 0;
  document.title = title ? `${title} - Shop book` : "Shop book";
  if (focus) view.focus({ preventScroll: true });
}

/** Asks the program, with the units of the shop; nothing is shown if something else was opened meanwhile. */
export async function tell(request) {
  const mine = turn;
  try {
    const told = await engine.tell({ units: kept.units(), ...request });
    return mine === turn ? told : null;
  } catch (fault) {
    if (mine === turn) show(broken(fault));
    return null;
  }
}

function broken(fault) {
  return el("div", { class: "plain" }, el("p", {}, "The program failed. This says nothing about the figure that you asked for."),
    el("p", { class: "quiet" }, String(fault.message ?? fault).slice(0, 600)),
    button("Load the page again", () => location.reload(), { class: "wide" }));
}

/** Opens a part; ``more`` is what it opens with. */
export function open(part, more = {}) {
  history.pushState({ part, more }, "", `#${part}`);
  turned(part, more);
}

async function turned(part, more) {
  const mine = ++turn;
  for (const link of links) {
    if (link.hash === `#${part}`) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
  }
  if (part === "ask") return more.text ? question(more) : start();
  const module = part === "job" ? await import("./job.js") : await import("./shelves.js");
  return mine === turn ? module[part](more, { show, tell, open }) : undefined;
}

async function start() {
  asked = null;
  const told = await tell({ do: "start" });
  if (told) show(asking.first(told.domains, go), { focus: false });
  setTimeout(() => engine.tell({ do: "ready" }), 300);
}

async function question(what) {
  asked = what;
  box.value = what.text;
  words.replaceChildren();
  const told = await tell({ do: "ask", text: what.text, also: what.also ?? null, compare: what.compare ?? null });
  if (!told) return;
  if (told.is !== "refused") kept.remember(what.text);
  show(asking.answer(told, what, go, ids => open("trust", { ids })), { title: what.text });
}

/** Asks; a near word is put into the box only, for the reader to look at. */
function go(what) {
  if (!what.near) return open("ask", what);
  box.value = what.text;
  box.focus();
  return complete();
}

async function complete() {
  const text = box.value;
  if (!text.trim()) return words.replaceChildren();
  const told = await engine.tell({ do: "complete", text });
  if (box.value !== text || document.activeElement !== box || told.is !== "words") return undefined;
  return words.replaceChildren(...told.lines.map(line => button(line.say, () => {
    box.value = line.text;
    box.focus();
    complete();
  })));
}

document.getElementById("ask").addEventListener("submit", event => {
  event.preventDefault();
  const text = box.value.trim();
  if (!text) return;
  clearTimeout(pause);
  box.blur();
  open("ask", { text });
});
let pause = 0;
box.addEventListener("input", () => {
  clearTimeout(pause);
  pause = setTimeout(complete, 60);
});
for (const link of [...links, document.querySelector(".top a")]) {
  link.addEventListener("click", event => {
    event.preventDefault();
    if (link.hash === "#ask") { box.value = ""; words.replaceChildren(); }
    open(link.hash.slice(1));
  });
}
units.value = kept.units();
units.addEventListener("change", () => {
  kept.setUnits(units.value);
  const { part, more } = history.state ?? { part: "ask", more: {} };
  turned(part, more);
});
addEventListener("popstate", event => turned(event.state?.part ?? "ask", event.state?.more ?? {}));

const failed = fault => {
  speaks.textContent = "Not running";
  document.getElementById("ask").hidden = true;
  show(el("div", { class: "plain" },
    el("p", {}, "This browser cannot run the program. A newer browser can, and the tables can be read in this one."),
    el("a", { class: "wide main", href: "tables.html" }, "Read the tables"),
    el("p", { class: "quiet note" }, String(fault.message ?? fault).slice(0, 300))));
};

async function begin() {
  show(el("div", { class: "plain" }, el("p", {}, "The program is starting. It shows no number before it has answered.")), { focus: false });
  if (!("DecompressionStream" in self) || !("WebAssembly" in self)) throw new Error("It lacks what Python needs.");
  await engine.start();
  const about = await engine.tell({ do: "about" });
  speaks.textContent = about.release.charAt(0).toUpperCase() + about.release.slice(1);
  const { part, more } = history.state ?? { part: location.hash.slice(1) || "ask", more: {} };
  const known = links.some(link => link.hash === `#${part}`);
  history.replaceState({ part: known ? part : "ask", more }, "", `#${known ? part : "ask"}`);
  await turned(known ? part : "ask", more);
}

begin().catch(failed);

/** Says that a newer edition is on the device, once it is there whole; it is opened when the reader wants it. */
function renewed(registration) {
  const waiting = registration.waiting;
  if (!waiting || !navigator.serviceWorker.controller || document.getElementById("newer")) return;
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
  speaks.after(button("Newer edition: open it", () => waiting.postMessage("take over"), { id: "newer", class: "newer" }));
}

if ("serviceWorker" in navigator) {
  navigator.serviceWorker.register("sw.js").then(registration => {
    renewed(registration);
    registration.addEventListener("updatefound", () => registration.installing.addEventListener("statechange", () => renewed(registration)));
  }, () => {});
}
