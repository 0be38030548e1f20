// A decision as on a card of the packet, and why.
import { button, el, fold } from "./dom.js";

const SAYS = { ask: "ASK FIRST", stop: "STOP", none: "NO FIGURE" };

/** The card of an answer or of a task; ``choose`` is told which candidate was pressed. */
export function card(shown, { level = "h2", number, choose } = {}) {
  const what = shown.what === shown.name ? "" : shown.what;
  const many = shown.count > 1 || shown.counted ? `${shown.count} ${shown.counted}`.trim() : "";
  const band = el("div", { class: "band" },
    number && el("span", { class: "no" }, String(number)),
    el("span", { class: "says" }, SAYS[shown.kind] ?? shown.verb),
    many && el("span", { class: "many" }, many));
  const inside = el("div", { class: "in" }, el(level, {}, shown.name), what && el("p", { class: "what" }, what),
    warnings(shown, true), body(shown, choose), table(shown), warnings(shown, false), foot(shown));
  return el("article", { class: `card ${shown.kind}`, "aria-label": `${SAYS[shown.kind] ?? shown.verb}: ${shown.name}` }, band, inside);
}

function warnings(shown, first) {
  return shown.cautions.filter(c => (c.word === "WARNING") === first)
    .map(c => el("p", { class: "warn" }, el("b", {}, c.word), ` ${c.text}`));
}

function body(shown, choose) {
  const state = shown.condition && el("span", { class: "state" }, shown.condition);
  if (shown.kind === "use") {
    const f = shown.figures[0];
    return [
      el("p", { class: "big" }, el("span", { class: "v", style: `--len:${Math.max(3, f.value.length)}` }, f.value),
        f.unit && [" ", el("span", { class: "u" }, f.unit)], f.plus && [" ", el("span", { class: "v" }, f.plus)], " ", state),
      f.other && el("p", { class: "other" }, f.other),
      shown.order && el("p", { class: "steps" }, shown.order + (shown.steps.length ? ":" : "")),
      shown.steps.length > 0 && el("ol", { class: "steps" }, shown.steps.map(s => el("li", {}, s))),
      shown.do && el("p", { class: "say" }, shown.do)];
  }
  if (shown.kind === "stop") {
    return [el("p", { class: "do" }, shown.do), shown.figures.map(f => el("p", { class: "say" }, f.when && `${f.when} `,
      f.then === "required" || f.when === "required" ? el("b", {}, amount(f)) : el("s", {}, amount(f))))];
  }
  if (shown.kind === "ask") {
    return [state && el("p", { class: "big" }, state), el("p", { class: "do" }, shown.do),
      el("div", { class: "either" }, shown.figures.map(f => candidate(f, choose)))];
  }
  return [state && el("p", { class: "big" }, state), el("p", { class: "do" }, shown.do), el("div", { class: "empty", "aria-hidden": "true" })];
}

const amount = f => `${f.value}${f.unit ? `\u00a0${f.unit}` : ""}${f.plus ? `\u00a0${f.plus}` : ""}`;

function candidate(f, choose) {
  const when = [f.when, f.then].filter(Boolean).join(": ");
  const inside = [el("span", { class: "v" }, f.value), f.unit && [" ", el("span", { class: "u" }, f.unit)], f.plus && [" ", el("span", { class: "u" }, f.plus)],
    f.other && el("span", { class: "o" }, f.other), when && el("span", { class: "when" }, when)];
  if (!choose || !f.also) return el("div", {}, inside);
  return button([inside, el("span", { class: "pick" }, "It is so: use this one")], () => choose(f.also));
}

function table(shown) {
  if (!shown.table.length) return null;
  const [head, ...rows] = shown.table;
  return el("table", { class: "marks" }, el("caption", { class: "out" }, shown.name),
    el("thead", {}, el("tr", {}, head.map(h => el("th", { scope: "col" }, h)))),
    el("tbody", {}, rows.map(r => el("tr", {}, r.map((v, n) => el("td", { "data-head": head[n] }, v))))));
}

function foot(shown) {
  const said = [shown.notes.map(n => `${n}. `).join(""), shown.again ? `Tighten again ${shown.again}.` : ""].join("").trim();
  return [said && el("p", { class: "say" }, said),
    shown.trust.word && el("p", { class: "trust" }, el("b", {}, shown.trust.word), `: ${shown.trust.source}`)];
}

/** Every figure, check and caution behind a decision, closed until it is asked for. */
export function why(behind, toSources) {
  return fold("Why", () => [
    behind.figures.length > 0 && el("h3", {}, "Figures"),
    behind.figures.map(f => figure(f, toSources)),
    behind.checks.length > 0 && el("h3", {}, "Checked"),
    el("ul", {}, behind.checks.map(c => el("li", { class: "check" }, el("b", {}, c.word), `${c.name}: ${c.reason}`))),
    behind.cautions.length > 0 && el("h3", {}, "Cautions"),
    el("ul", {}, behind.cautions.map(c => el("li", { class: "check" }, el("b", {}, c.word), c.text)))]);
}

function figure(f, toSources) {
  return el("div", { class: "fig" },
    el("p", { class: "n" }, el("span", {}, f.label), el("b", {}, f.number), f.other && el("span", {}, f.other)),
    el("p", {}, [f.trust, f.source].filter(Boolean).join(": ")),
    f.conditions && el("p", { class: "quiet" }, f.conditions),
    f.formula && el("p", { class: "quiet" }, `${f.formula}${f.inputs.length ? `, from ${f.inputs.join("; ")}` : ""}`),
    f.others.length > 0 && el("p", { class: "quiet" }, `Other figures on record: ${f.others.join("; ")}`),
    f.sources.length > 0 && button(`Source: ${f.sources.join(", ")}`, () => toSources(f.sources), { class: "link" }));
}
