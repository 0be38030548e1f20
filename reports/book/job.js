// A job on the phone: its first page, its cards one at a time, what was written on them, its drawings.
import { button, drawn, el, fold, give, taker } from "./dom.js";
import { card, why } from "./card.js";
import * as kept from "./kept.js";

// The job worked out last, so that turning between its pages does not work it out again.
let last = { text: "", units: "", told: null };

export async function job(more, page) {
  if (!more.name) return shelf(page);
  const found = kept.job(more.name);
  if (!found) return shelf(page, "This job is no longer kept here. Open its file again.");
  const told = await workedOut(found, page);
  if (!told) return undefined;
  if (told.is === "refused") return refused(told, found, page);
  return more.card ? deck(told, found, more.card, page) : front(told, found, page);
}

async function workedOut(found, page) {
  if (last.told && last.text === found.text && last.units === kept.units()) return last.told;
  const units = kept.units();
  page.show(el("div", { class: "plain" }, el("p", {}, "The program works the job out. A large one takes some seconds.")), { title: found.name });
  const told = await page.tell({ do: "job", text: found.text, name: found.name });
  if (told) last = { text: found.text, units, told };
  return told;
}

function shelf(page, note = "") {
  const said = el("p", { class: "note", role: "status" }, note);
  const take = (text, name) => {
    if (text.length > 1_000_000) said.textContent = "This file is too large for a job file.";
    else if (kept.keepJob(name, text)) page.open("job", { name });
    else said.textContent = "This device has no room to keep the job. Delete something under Trust first.";
  };
  const starter = async () => {
    const told = await page.tell({ do: "starter" });
    if (told) give("job.toml", told.text);
  };
  page.show([
    el("h2", {}, "Job"),
    el("p", {}, "A job file holds what you know of one build. The book makes its first page and its cards."),
    taker("Open a job file", take, { class: "wide main" }),
    said,
    kept.jobs().length > 0 && [el("h2", {}, "Kept on this device"), el("ul", {}, kept.jobs().map(j => el("li", {},
      button(j.name, () => page.open("job", { name: j.name }), { class: "tap" }))))],
    el("h2", {}, "No job file yet?"),
    button("Take a commented one to fill in", starter, { class: "wide" })], { title: "Job" });
}

function refused(told, found, page) {
  page.show([
    el("article", { class: "card none", "aria-label": "The job file is not read" }, el("div", { class: "band" }, el("span", { class: "says" }, "NOT READ")),
      el("div", { class: "in" }, el("h2", {}, found.name), told.told.why.map(line => el("p", { class: "what" }, line)))),
    editor(found, page, true)], { title: found.name });
}

/** The text of the file, to mend it here. */
function editor(found, page, isOpen = false) {
  const box = el("textarea", { id: "text-of", rows: "16", spellcheck: "false", autocapitalize: "off", autocomplete: "off", wrap: "off" });
  box.value = found.text;
  const inside = () => [el("label", { class: "ask-label", for: "text-of" }, "The job file"), box,
    el("div", { class: "pair" },
      button("Work it out again", () => { kept.keepJob(found.name, box.value); page.open("job", { name: found.name }); }, { class: "wide main" }),
      button("Give it as a file", () => give(found.name, box.value), { class: "wide" }))];
  return isOpen ? el("div", {}, inside()) : fold("Change the job file", inside);
}

function front(told, found, page) {
  const first = told.first;
  const to = (number, inside) => button(inside, () => page.open("job", { name: found.name, card: number }), { class: "tap" });
  const count = (n, text) => el("div", {}, el("dt", {}, text), el("dd", {}, String(n)));
  page.show([
    el("h2", {}, told.title), told.vehicle && el("p", {}, told.vehicle), told.notes && el("p", { class: "quiet" }, told.notes),
    el("p", { class: "quiet" }, [told.document.revision && `Revision ${told.document.revision}`, told.document.status, told.release, `digest ${told.digest}`].filter(Boolean).join(", ")),
    el("section", { class: "verdict", "aria-label": "Ready or not" }, el("p", { class: "s" }, first.is_ready ? "READY TO BUILD" : "NOT READY TO BUILD"),
      el("dl", {}, count(first.stops, "STOP"), count(first.asks, "ask first"), count(first.ready, "ready"))),
    first.contradiction && el("p", { class: "warn" }, first.contradiction),
    to(1, "The cards, one at a time"),
    first.stopped.length > 0 && [el("h2", {}, "Stop"), el("ul", {}, first.stopped.map(s => el("li", {}, todo(s.number, s.name, [s.why, " ", el("b", {}, s.do)], "stop", found, page))))],
    first.groups.map(g => [el("h2", {}, g.head), el("ul", {}, g.rows.map(r => el("li", {},
      todo(r.items[0].number, r.many || r.items.map(i => i.name).join("; "), [r.text], "", found, page))))]),
    el("h2", {}, "Every card"),
    el("ul", {}, told.cards.map(c => el("li", {}, todo(c.number, c.name, [figureOf(c)], c.kind === "stop" ? "stop" : "", found, page)))),
    written(told, found, page),
    editor(found, page),
    drop(found, page),
    el("p", { class: "governs" }, told.governs)], { title: told.title });
}

const SAYS = { ask: "ASK FIRST", stop: "STOP", none: "NO FIGURE" };

function figureOf(c) {
  const numbers = (c.card?.figures ?? []).map(f => [f.value, f.unit, f.plus].filter(Boolean).join("\u00a0")).join(" or ");
  if (c.kind === "use") return numbers;
  return c.kind === "ask" && numbers ? `${SAYS.ask}: ${numbers}` : SAYS[c.kind] ?? "";
}

function todo(number, name, text, kind, found, page) {
  return button([el("span", { class: "k" }, String(number)), el("span", {}, el("b", {}, name), text)],
    () => page.open("job", { name: found.name, card: number }), { class: `todo ${kind}` });
}

function drop(found, page) {
  const made = button("Delete this job from the device", () => {
    if (!made.dataset.sure) { made.dataset.sure = "1"; made.textContent = "Press again to delete it and what was written"; return; }
    kept.dropJob(found.name);
    page.open("job");
  }, { class: "wide" });
  return made;
}

/** What was written on the cards: given as a file, and read back. */
function written(told, found, page) {
  const note = el("p", { class: "note", role: "status" });
  const count = Object.values(found.filled).filter(boxes => Object.values(boxes).some(text => text.trim())).length;
  const save = async () => {
    const file = await page.tell({ do: "done", text: found.text, name: found.name, filled: found.filled });
    if (file?.is === "file") give(file.name, file.text);
  };
  const back = async (text, name) => {
    const got = await page.tell({ do: "taken", text, name, digest: told.digest });
    if (got?.is !== "taken") { note.textContent = [...(got?.told.why ?? []), got?.told.do].join(" "); return; }
    kept.fill(found.name, { ...found.filled, ...got.filled });
    page.open("job", { name: found.name });
  };
  return [el("h2", {}, "As done at the car"),
    el("p", {}, count ? `${count} ${count === 1 ? "card has" : "cards have"} something written on ${count === 1 ? "it" : "them"}.` : "Nothing is written on the cards yet."),
    el("div", { class: "pair" }, count > 0 && button("Give it as a file", save, { class: "wide main" }), taker("Read one back", back, { class: "wide" })), note];
}

function deck(told, found, number, page) {
  const cards = told.cards.map(c => one(c, found, page));
  const made = el("div", { class: "deck", role: "group", "aria-label": "Cards, one at a time", tabindex: "0" }, cards);
  const place = el("p", { role: "status" });
  let at = -1;
  const settle = () => {
    const now = Math.max(0, Math.min(cards.length - 1, Math.round(made.scrollLeft / Math.max(1, cards[0].offsetWidth + 14))));
    made.style.height = `${cards[now].offsetHeight}px`;
    if (now === at) return;
    at = now;
    place.textContent = `${at + 1} of ${cards.length}`;
    cards.forEach((c, n) => { c.inert = n !== at; });
    before.disabled = at === 0;
    after.disabled = at === cards.length - 1;
    history.replaceState({ part: "job", more: { name: found.name, card: told.cards[at].number } }, "");
  };
  const turnTo = (n, how) => {
    made.scrollTo({ left: n * (cards[0].offsetWidth + 14), behavior: how });
    document.getElementById("view").scrollTop = 0;
  };
  const before = button("Before", () => turnTo(at - 1), { "aria-label": "Card before" });
  const after = button("Next", () => turnTo(at + 1), { "aria-label": "Next card" });
  made.addEventListener("scroll", settle, { passive: true });
  page.show([button("First page of the job", () => page.open("job", { name: found.name }), { class: "wide" }),
    el("div", { class: "turn" }, before, place, after), made], { title: told.title });
  turnTo(told.cards.findIndex(c => c.number === number), "instant");
  settle();
  const sizes = new ResizeObserver(() => { if (made.isConnected) settle(); else sizes.disconnect(); });
  cards.forEach(c => sizes.observe(c));
}

function one(c, found, page) {
  const sources = ids => page.open("trust", { ids });
  const shown = c.card ? card(c.card, { number: c.number }) : desk(c);
  return el("div", { class: "leaf" }, shown, c.card && boxes(c, found), why(c.why, sources),
    c.drawings.map(d => el("figure", { class: `drawing ${d.page}` }, el("figcaption", {}, d.title),
      el("div", { class: "pan", tabindex: "0", role: "group", "aria-label": `Drawing: ${d.title}` }, drawn(d.svg)))));
}

/** What has no card at the car: it is for the desk. */
function desk(c) {
  return el("article", { class: `card ${c.kind}`, "aria-label": c.name },
    el("div", { class: "band" }, el("span", { class: "no" }, String(c.number)), el("span", { class: "says" }, SAYS[c.kind] ?? "AT THE DESK")),
    el("div", { class: "in" }, el("h2", {}, c.name), c.do && el("p", { class: "do" }, c.do),
      c.cautions.map(k => el("p", { class: "warn" }, el("b", {}, k.word), ` ${k.text}`))));
}

/** The boxes of a card, kept as they are written. */
function boxes(c, found) {
  if (!c.card.boxes.length) return null;
  const of = found.filled[c.number] ?? {};
  return el("div", { class: "boxes", role: "group", "aria-label": `As done: ${c.name}` }, c.card.boxes.map((b, n) => {
    const id = `box-${c.number}-${n}`;
    const input = el("input", { id, type: "text", autocomplete: "off", maxlength: "120", enterkeyhint: "next" });
    input.value = of[b.label] ?? "";
    input.addEventListener("input", () => {
      const all = kept.job(found.name)?.filled ?? {};
      found.filled = { ...all, [c.number]: { ...(all[c.number] ?? {}), [b.label]: input.value } };
      kept.fill(found.name, found.filled);
    });
    return el("label", { class: b.half ? "half" : "", for: id }, b.unit ? `${b.label}, ${b.unit}` : b.label, input);
  }));
}
