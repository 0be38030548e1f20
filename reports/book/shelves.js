// The tables to look through, the publications, how far to trust them, and what is kept on this device.
import { button, el, fold, give, taker } from "./dom.js";
import * as kept from "./kept.js";

export async function tables(more, page) {
  if (more.table) return rows(more, page);
  const told = await page.tell({ do: "domains" });
  if (!told) return;
  page.show([
    el("p", { class: "quiet" }, `Every figure of ${told.release}, with its source. It is quicker to ask, and the answer says what to watch.`),
    told.domains.map(d => [el("h2", {}, d.say), el("ul", { class: "rows" }, d.tables.map(t => el("li", {},
      button([el("span", {}, t.say), el("small", {}, el("span", {}, `${t.figures} figures`))],
        () => page.open("tables", { table: t.table }), { class: "tap" }))))])], { title: "Tables" });
}

async function rows(more, page) {
  const told = await page.tell({ do: "table", table: more.table });
  if (!told) return;
  const alone = told.groups.length === 1;
  page.show([
    button("All tables", () => page.open("tables"), { class: "wide" }),
    el("h2", {}, told.say),
    alone ? told.groups[0].rows.map(row) : filtered(told.groups),
    el("p", { class: "governs" }, `The part maker\u2019s figure governs if you have it. This is ${told.release}.`)], { title: told.say });
}

/** The groups with a box that leaves those which have what is typed. */
function filtered(groups) {
  const list = el("ul");
  const fill = text => list.replaceChildren(...groups.filter(g => g.say.toLowerCase().includes(text.toLowerCase()))
    .map(g => el("li", {}, fold(`${g.say} (${g.rows.length})`, () => el("div", {}, g.rows.map(row))))));
  fill("");
  if (groups.length < 8) return list;
  const input = el("input", { type: "search", id: "narrow", autocomplete: "off", autocapitalize: "off", spellcheck: "false", oninput: () => fill(input.value.trim()) });
  return [el("label", { class: "ask-label", for: "narrow" }, "Only those with"), el("div", { class: "field" }, input), list];
}

function row(r) {
  return el("div", { class: "found" },
    el("p", { class: "n" }, el("span", {}, [r.label, r.keys].filter(Boolean).join(", ")), el("b", {}, r.number)),
    r.other && el("p", {}, r.other),
    el("p", {}, [r.trust, r.source].filter(Boolean).join(": "), r.standing && el("b", {}, ` ${r.standing.toUpperCase()}`)),
    r.conditions && el("p", { class: "quiet" }, r.conditions));
}

export async function trust(more, page) {
  if (more.ids || more.words !== undefined) return publications(more, page);
  if (more.audit) return audit(page);
  const told = await page.tell({ do: "about" });
  if (!told) return;
  page.show([
    el("h2", {}, "How far to trust a number"),
    el("dl", { class: "terms" }, told.trust.map(t => [el("dt", {}, t.word), el("dd", {}, t.means)])),
    el("p", { class: "governs" }, told.governs),
    button("Publications", () => page.open("trust", { words: "" }), { class: "wide" }),
    button("Audit: what was read, and what was not", () => page.open("trust", { audit: true }), { class: "wide" }),
    device(page),
    el("p", { class: "quiet note" }, `${told.program}, ${told.release}. `, el("a", { href: "tables.html" }, "The tables as a plain page"), ".")], { title: "Trust" });
}

function device(page) {
  const again = () => page.open("trust");
  const many = (n, one) => `${n} ${one}${n === 1 ? "" : "s"}`;
  const note = el("p", { class: "quiet note", role: "status" });
  const drop = button("Delete all of it", () => {
    if (drop.dataset.sure) { kept.forget(); again(); } else { drop.dataset.sure = "1"; drop.textContent = "Press again to delete it"; }
  });
  return [el("h2", {}, "What is kept on this device"),
    el("p", {}, `${many(kept.questions().length, "question")} and ${many(kept.jobs().length, "job")}. Nothing of it is sent anywhere.`),
    el("div", { class: "chips" },
      !kept.isEmpty() && button("Export as a file", () => give("shop-book-kept.json", kept.exported())),
      taker("Read a file back", text => {
        if (kept.restore(text)) again();
        else note.textContent = "This file does not hold what the book exports. Choose another.";
      }),
      !kept.isEmpty() && drop), note];
}

async function publications(more, page) {
  const told = await page.tell(more.ids ? { do: "source", ids: more.ids } : { do: "sources", text: more.words });
  if (!told) return;
  const input = el("input", { type: "search", id: "words-of", autocomplete: "off", autocapitalize: "off", spellcheck: "false" });
  input.value = more.words ?? "";
  const form = el("form", { class: "field" }, input, el("button", { type: "submit" }, "Find"));
  form.addEventListener("submit", event => { event.preventDefault(); page.open("trust", { words: input.value.trim() }); });
  page.show([
    el("h2", {}, "Publications"), el("label", { class: "ask-label", for: "words-of" }, "With these words"), form,
    told.sources.length === 0 && el("p", { class: "note" }, "No publication has all of these words."),
    told.sources.map(s => el("div", { class: "found" }, el("p", {}, el("b", {}, s.id), ` ${s.title}`), el("p", {}, `${s.about}; ${s.figures} figures`),
      s.note && el("p", { class: "quiet" }, s.note)))], { title: "Publications" });
}

async function audit(page) {
  const told = await page.tell({ do: "audit" });
  if (!told) return;
  page.show([
    el("h2", {}, "Audit of the tables"), el("p", { class: "quiet" }, `Of ${told.release}.`),
    told.domains.map(d => el("div", { class: "found" }, el("p", { class: "n" }, el("span", {}, d.say), el("b", {}, `${d.figures} figures`)),
      el("ul", {}, d.by.map(b => el("li", { class: "check" }, `${b.figures} ${b.say}`))))),
    el("h2", {}, "What is weak"), el("ul", {}, told.kinds.map(k => el("li", { class: "check" }, `${k.count} ${k.say}`))),
    el("h2", {}, "What to read next"), el("ul", {}, told.next.map(n => el("li", { class: "check" }, `${n.say}: ${n.figures} figures${n.hurt ? ", some of which can hurt somebody" : ""}`)))], { title: "Audit" });
}
