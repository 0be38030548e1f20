// The question and its answer.
import { button, el } from "./dom.js";
import { card, why } from "./card.js";
import * as kept from "./kept.js";

/** What stands before anything was asked: what was asked last, and questions to try. */
export function first(domains, go) {
  const asked = kept.questions();
  return [
    asked.length > 0 && [el("h2", {}, "Asked last"), el("ul", {}, asked.slice(0, 8).map(q => el("li", {}, question(q, go))))],
    el("h2", {}, "Try one of these"),
    domains.map(d => [el("h3", { class: "group" }, d.say),
      el("ul", {}, d.examples.map(q => el("li", {}, question(q, go))))]),
    el("p", { class: "quiet note" }, "Ask as you would say it. What you ask stays on this device. ",
      el("a", { href: "#trust" }, "See what is kept, export it or delete it"), ".")];
}

const question = (text, go) => button(text, () => go({ text }), { class: "tap" });

/** An answer of any kind. ``asked`` is what was asked, ``go`` asks again. */
export function answer(told, asked, go, toSources) {
  if (told.is === "refused") return refused(told, asked, go);
  const read = el("p", { class: "read" }, `Read as ${told.read_as}.`);
  const end = el("p", { class: "governs" }, `${told.governs} This is ${told.release}.`);
  return [read, told.is === "table" ? table(told, asked, go) : sheet(told, asked, go, toSources), beside(told, asked, go), end];
}

function also(asked, more) {
  return { ...asked, compare: undefined, also: { ...(asked.also ?? {}), ...more } };
}

function sheet(told, asked, go, toSources) {
  return [
    card(told.card, { choose: more => go(also(asked, more)) }),
    said(asked, go),
    told.questions.map(q => settle(q, told, asked, go)),
    told.maker && maker(told, asked, go),
    why(told.why, toSources)];
}

/** What was said by pressing, each to take back. */
function said(asked, go) {
  const entries = Object.entries(asked.also ?? {}).filter(([, value]) => value);
  if (!entries.length) return null;
  return el("div", { class: "chips" }, el("span", { class: "lead" }, "You said"), entries.map(([key, value]) =>
    button(`${key.replaceAll("_", " ")}: ${value} \u2715`, () => {
      const left = { ...asked.also };
      delete left[key];
      go({ ...asked, also: left });
    }, { "aria-label": `take back ${key.replaceAll("_", " ")}: ${value}` })));
}

function settle(q, told, asked, go) {
  const text = q.text.startsWith(q.kind) ? q.text : `${q.kind}: ${q.text}`;
  if (!q.key) return el("p", { class: "ask-label" }, text);
  if (q.choices.length) {
    return el("div", { class: "chips", role: "group", "aria-label": q.text }, el("span", { class: "lead" }, q.text === told.card.do ? `${q.say}:` : q.text),
      q.choices.map(value => button(value, () => go(also(asked, { [q.key]: value })))));
  }
  return field(q.key, text, asked, go);
}

function field(key, text, asked, go) {
  const input = el("input", { type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", enterkeyhint: "go", id: `field-${key}`, maxlength: "80" });
  const form = el("form", { class: "field" }, input, el("button", { type: "submit", "aria-label": `Say it: ${text}` }, "Say"));
  form.addEventListener("submit", event => {
    event.preventDefault();
    if (input.value.trim()) go(also(asked, { [key]: input.value.trim() }));
  });
  return [el("label", { class: "ask-label", for: `field-${key}` }, text), form];
}

function maker(told, asked, go) {
  return field(told.maker, "The part maker\u2019s figure, with its unit, if you have it", asked, go);
}

function table(told, asked, go) {
  return el("section", { class: "rows" }, el("h2", {}, told.title.charAt(0).toUpperCase() + told.title.slice(1)),
    el("ul", {}, told.rows.map(r => el("li", {}, row(r, asked, go)))),
    told.more > 0 && el("p", { class: "quiet" }, `And ${told.more} more. Say more of it.`));
}

function row(r, asked, go) {
  const sign = r.word && el("b", { class: `sign ${r.kind}` }, r.word);
  const inside = [el("span", {}, r.names.join(", ")), sign || el("b", {}, r.number),
    el("small", {}, el("span", {}, r.kind === "ask" && r.number ? `${r.number}; ${r.trust}` : r.trust), r.other && el("span", {}, r.other)),
    r.said && el("small", { class: "said" }, r.said)];
  return r.also ? button(inside, () => go(also(asked, r.also)), { class: "tap" }) : el("div", { class: "tap still" }, inside);
}

function beside(told, asked, go) {
  const chips = (told.compare ?? []).map(c => button(c.say, () => go({ ...asked, compare: c.key }), { "aria-label": `side by side: ${c.say}` }));
  if (!chips.length || asked.compare) return null;
  return el("div", { class: "chips" }, el("span", { class: "lead" }, "Side by side"), chips);
}

function refused(told, asked, go) {
  const near = told.told.near.filter(n => !asked.text.toLowerCase().split(" ").includes(n.toLowerCase()));
  return el("article", { class: "card none", "aria-label": "Not answered" }, el("div", { class: "band" }, el("span", { class: "says" }, "NOT ANSWERED")),
    el("div", { class: "in" }, told.told.why.map(line => el("p", { class: "what" }, line)),
      told.told.do && el("p", { class: "do" }, told.told.do),
      near.length > 0 && el("div", { class: "chips" }, el("span", { class: "lead" }, "Near it"), near.map(n =>
        button(n, () => go({ text: mended(asked.text, n), near: true }))))));
}

/** The line with a near word in the place of the word that begins most like it, to look at before it is asked. */
function mended(text, word) {
  const alike = typed => {
    let n = 0;
    while (n < typed.length && typed[n].toLowerCase() === word[n]?.toLowerCase()) n += 1;
    return n;
  };
  const words = text.split(" ");
  const best = words.reduce((at, typed, n) => (alike(typed) > alike(words[at]) ? n : at), 0);
  if (alike(words[best]) < 2) return `${text} ${word}`;
  return words.map((typed, n) => (n === best ? word : typed)).join(" ");
}
