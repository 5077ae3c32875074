"use strict";
// A curve from a picture: the marks stand in the form, in pixels of the picture;
// this script sets them by tap, mouse and keys and shows them. The picture is
// read from the device and goes nowhere; only its beginning is asked about.
const $ = (id) => document.getElementById(id);
const form = $("chart"), board = $("board"), stage = $("stage"), sheetOf = stage.firstElementChild;
const shown = $("shown"), over = $("over"), now = $("now"), refused = $("refused");
const tools = [...form.querySelectorAll("[data-tool]")], order = ["f1", "f2", "h1", "h2", "p"];
let tool = "f1", last = "f1", wide = 0, high = 0, zoom = 1, url = "", busy = 0;

const inputOf = (key) => $("at-" + key);
const parse = (text) => { const n = text.trim().split(/[\s,]+/).map(Number); return n.length === 2 && n.every(Number.isFinite) ? n : null; };
const points = () => $("points").value.split("\n").map(parse).filter(Boolean);
const write = (n) => n.map((v) => String(Math.round(v * 10) / 10)).join(" ");
const inside = ([x, y]) => [Math.min(Math.max(x, 0), wide), Math.min(Math.max(y, 0), high)];

// A mark is named by its key: f1 ... h2, k, or p0, p1 ... along the curve.
function get(key) { return key[0] === "p" ? points()[Number(key.slice(1))] : parse(inputOf(key).value); }
function set(key, at) {
  if (key[0] !== "p") { inputOf(key).value = at ? write(at) : ""; return; }
  const list = points(), i = Number(key.slice(1));
  if (at) list[i] = at; else list.splice(i, 1);
  $("points").value = list.map(write).join("\n");
}

function choose(key) {
  tool = key;
  for (const b of tools) b.setAttribute("aria-pressed", String(b.dataset.tool === key));
}

function draw() {
  for (const old of over.querySelectorAll("g")) old.remove();
  const r = wide / sheetOf.clientWidth; // pixels of the picture in one of the screen
  if (!Number.isFinite(r)) return; // not shown
  const all = [...order.slice(0, 4), "k"].filter(get).concat(points().map((_, i) => "p" + i));
  for (const key of all) {
    const [x, y] = get(key), g = document.createElementNS("http://www.w3.org/2000/svg", "g");
    g.setAttribute("class", "at " + (key[0] === "p" ? "p" : key) + (key === last ? " last" : ""));
    const add = (name, attributes) => {
      const e = document.createElementNS("http://www.w3.org/2000/svg", name);
      for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
      g.append(e);
      return e;
    };
    const s = (key === last ? 16 : 9) * r;
    add("circle", { cx: x, cy: y, r: s });
    add("path", { d: `M${x - s * 1.6} ${y}H${x - s * 0.25}M${x + s * 0.25} ${y}H${x + s * 1.6}M${x} ${y - s * 1.6}V${y - s * 0.25}M${x} ${y + s * 0.25}V${y + s * 1.6}` });
    if (key[0] !== "p") add("text", { x: x + s * 1.2, y: y - s * 1.2, "font-size": 17 * r }).textContent = key === "k" ? "?" : (key[0] === "f" ? "Q" : "H") + key[1];
    over.append(g);
  }
  const name = tools.find((b) => b.dataset.tool === (last[0] === "p" ? "p" : last)).ariaLabel, at = get(last);
  now.textContent = at ? name + (last[0] === "p" ? " " + (Number(last.slice(1)) + 1) : "") + ": " + write(at) : tools.find((b) => b.dataset.tool === tool).ariaLabel;
}

// A tap sets what is chosen; a further mark of an axis is chosen by itself.
function put(at) {
  last = tool === "p" ? "p" + points().length : tool;
  const fresh = tool === "p" || !get(tool);
  set(last, inside(at));
  if (fresh && tool !== "p" && tool !== "k") choose(order[order.indexOf(tool) + 1]);
  draw();
  fit();
}

function move(x, y) {
  const at = get(last);
  if (!at) return;
  set(last, inside([at[0] + x, at[1] + y]));
  draw();
  reveal();
  fit();
}

// reveal keeps the mark in sight where the picture is larger than its frame.
function reveal() {
  const at = get(last), scale = sheetOf.clientWidth / wide;
  for (const [side, span, where] of [["scrollLeft", stage.clientWidth, at[0] * scale], ["scrollTop", stage.clientHeight, at[1] * scale]]) {
    if (where < stage[side] + 20) stage[side] = where - span / 3;
    if (where > stage[side] + span - 20) stage[side] = where - span * 2 / 3;
  }
}

// fit asks for the curve, and puts the newest answer in place.
async function fit() {
  if (points().length < 2 || !order.slice(0, 4).every((k) => get(k) && $("v-" + k).value.trim())) return;
  const turn = ++busy;
  const body = new URLSearchParams(new FormData(form));
  body.set("do", "fit");
  const r = await fetch(form.action, { method: "POST", body });
  const page = new DOMParser().parseFromString(await r.text(), "text/html"), fresh = page.getElementById("fit");
  if (turn !== busy || !fresh) return;
  $("fit").replaceWith(document.adoptNode(fresh));
  $("fitline").setAttribute("points", fresh.dataset.drawn);
}

async function open(file) {
  refused.hidden = true;
  if (!file) return;
  const r = await fetch(form.action + "/check?size=" + file.size, { method: "POST", headers: { "Content-Type": "application/octet-stream" }, body: file.slice(0, 1 << 20) });
  const said = await r.json().catch(() => ({ error: board.dataset.undone }));
  if (said.error) { refuse(said.error); return; }
  if (url) URL.revokeObjectURL(url);
  url = URL.createObjectURL(new Blob([file], { type: said.type })); // shown as what was checked, whatever it calls itself
  shown.src = url;
}

function refuse(text) { refused.textContent = text; refused.hidden = false; board.hidden = true; }

function size(z) {
  zoom = z;
  sheetOf.style.width = Math.min(stage.clientWidth, innerHeight * 0.72 * wide / high) * z + "px"; // at 1 the whole of it is in sight
  draw();
}

shown.addEventListener("load", () => {
  wide = shown.naturalWidth;
  high = shown.naturalHeight;
  over.setAttribute("viewBox", `0 0 ${wide} ${high}`);
  board.hidden = false;
  choose(order.find((k) => k === "p" || !get(k)));
  size(1);
  stage.focus({ preventScroll: true });
});
shown.addEventListener("error", () => refuse(board.dataset.undone));
for (const id of ["choose", "snap"]) $(id).addEventListener("change", (e) => open(e.target.files[0]).catch(() => refuse(board.dataset.undone)));

sheetOf.addEventListener("click", (e) => {
  const box = sheetOf.getBoundingClientRect();
  put([(e.clientX - box.left) * wide / box.width, (e.clientY - box.top) * high / box.height]);
});

stage.addEventListener("keydown", (e) => {
  const step = e.shiftKey ? 10 : 1, way = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[e.key];
  if (way) move(...way);
  else if (e.key === "Enter") {
    const box = sheetOf.getBoundingClientRect(), frame = stage.getBoundingClientRect();
    put([(frame.left + stage.clientWidth / 2 - box.left) * wide / box.width, (frame.top + stage.clientHeight / 2 - box.top) * high / box.height]);
  } else if (e.key === "n" || e.key === "N") next();
  else if (e.key === "Delete" || e.key === "Backspace") drop();
  else return;
  e.preventDefault();
});

function next() {
  if (last[0] === "p" && points().length) { last = "p" + ((Number(last.slice(1)) + 1) % points().length); choose("p"); } else {
    choose(order[Math.min(order.indexOf(tool) + 1, 4)]);
    last = tool === "p" ? (points().length ? "p0" : last) : get(tool) ? tool : last;
  }
  draw();
}

function drop() {
  if (!get(last)) return;
  set(last, null);
  if (last[0] === "p") last = points().length ? "p" + Math.max(0, Number(last.slice(1)) - 1) : "h2";
  else choose(last);
  draw();
  fit();
}

form.addEventListener("click", (e) => {
  const b = e.target.closest("button[type=button]");
  if (!b) return;
  if (b.dataset.tool) { choose(b.dataset.tool); if (b.dataset.tool !== "p" && get(b.dataset.tool)) last = b.dataset.tool; draw(); }
  if (b.dataset.move) move(...b.dataset.move.split(" ").map(Number));
  if (b.dataset.zoom) size(Number(b.dataset.zoom));
  if (b.dataset.do === "next") next();
  if (b.dataset.do === "drop") drop();
});
form.addEventListener("change", (e) => {
  if (/^(v|at)-|^points$/.test(e.target.id)) { if (wide) draw(); fit(); }
});
form.addEventListener("submit", async (e) => {
  e.preventDefault();
  if (!(e.submitter && e.submitter.value === "save")) { fit(); return; }
  const body = new URLSearchParams(new FormData(form));
  body.set("do", "save");
  const r = await fetch(form.action, { method: "POST", body });
  if (r.redirected) { location.assign(r.url); return; }
  const fresh = new DOMParser().parseFromString(await r.text(), "text/html").getElementById("fit");
  if (fresh) { $("fit").replaceWith(document.adoptNode(fresh)); fresh.scrollIntoView({ block: "center" }); }
});
window.addEventListener("resize", () => { if (wide) size(zoom); });
