// Makes what the page shows. Text is always text: nothing that was typed or read from a file becomes a tag.

/** An element: attributes by name, listeners by "on...", children as nodes or text; what is empty is left out. */
export function el(tag, attributes, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (value === undefined || value === null || value === false || value === "") continue;
    if (name.startsWith("on")) made.addEventListener(name.slice(2), value);
    else if (name === "style") made.style.cssText = value;
    else made.setAttribute(name, value === true ? "" : value);
  }
  add(made, children);
  return made;
}

export function add(parent, children) {
  for (const child of children.flat(Infinity)) {
    if (child === undefined || child === null || child === false || child === "") continue;
    parent.append(child);
  }
  return parent;
}

/** A button that says what it does. */
export function button(text, press, attributes) {
  return el("button", { type: "button", onclick: press, ...attributes }, [text]);
}

/** A part that is opened by touch: closed at first. */
export function fold(title, make, attributes) {
  const inside = el("div");
  let filled = false;
  const made = el("details", attributes, el("summary", {}, title), inside);
  made.addEventListener("toggle", () => {
    if (made.open && !filled) { filled = true; add(inside, [make()]); }
  });
  return made;
}

/** A drawing, which the program gives as SVG. */
export function drawn(svg) {
  const read = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  return read.localName === "svg" ? document.importNode(read, true) : el("p", {}, "The drawing cannot be shown.");
}

/** Gives a text to the device as a file. */
export function give(name, text) {
  const address = URL.createObjectURL(new Blob([text], { type: "text/plain;charset=utf-8" }));
  const link = el("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60000);
}

/** A button that takes a file and hands on its text and name. */
export function taker(text, take, attributes) {
  const input = el("input", { type: "file", accept: ".toml,.json,.txt", class: "out", tabindex: "-1", "aria-hidden": "true" });
  input.addEventListener("change", async () => {
    const file = input.files[0];
    if (file) take(await file.text(), file.name);
    input.value = "";
  });
  return [input, button(text, () => input.click(), attributes)];
}
