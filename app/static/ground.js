"use strict";
// The outline of a pond by taps, by dragging and by keys. Nothing is kept here:
// each corner placed, moved or removed is posted as the fields beside it would
// be, and the drawing that comes back takes the old one's place.
(() => {
  const stage = document.getElementById("stage"), tools = document.getElementById("groundtools"), now = document.getElementById("groundnow");
  let chosen = "", after = -1, cross = null, keys = false, grip = null, waiting = null, timer = 0;
  tools.hidden = false;
  const svg = () => stage.querySelector("svg");
  const marks = () => [...stage.querySelectorAll(".mark")];
  const keyOf = (m) => m.dataset.at + m.dataset.side;
  const mark = (key) => marks().find((m) => keyOf(m) === key);
  const whereIs = (m) => ({ x: Number(m.dataset.x), y: Number(m.dataset.y) });
  const taped = () => svg().dataset.kind === "offsets";
  const inch = 0.0254;

  // A length as a person would write it, to the sixteenth of an inch or the millimetre.
  function text(v) { return svg().dataset.comma === "true" ? plain(v).replace(".", ",") : plain(v); }
  function plain(v) {
    if (svg().dataset.feet !== "true") return String(Math.round(v * 1000) / 1000) + " m";
    const sixteenths = Math.round(Math.abs(v) / inch * 16), whole = Math.floor(sixteenths / 16);
    if (sixteenths % 16) return (v < 0 ? "-" : "") + sixteenths / 16 + " in";
    return (v < 0 && whole ? "-" : "") + Math.floor(whole / 12) + "' " + whole % 12 + '"';
  }
  const onGrid = (v) => { const f = Number(svg().dataset.fine); return Math.round(v / f) * f; };
  const fill = (words, o) => words.replace(/#(\w+)#/g, (_, k) => o[k]);

  function tell(words) {
    if (words) { now.textContent = words; return; }
    const m = mark(chosen);
    if (m) now.textContent = fill(stage.dataset.corner, { name: m.dataset.name, x: text(whereIs(m).x), y: text(whereIs(m).y) });
    else now.textContent = keys && cross ? fill(stage.dataset.cross, { x: text(cross.x), y: text(cross.y) }) : stage.dataset.none;
  }

  function show(words) {
    for (const m of marks()) m.classList.toggle("chosen", keyOf(m) === chosen);
    svg().querySelector(".cross")?.remove();
    if (keys && cross && !chosen) {
      const s = Number(svg().dataset.dot) * 2.5, g = document.createElementNS("http://www.w3.org/2000/svg", "path");
      g.setAttribute("class", "cross");
      g.setAttribute("d", `M${cross.x * 100 - s} ${-cross.y * 100}h${2 * s}M${cross.x * 100} ${-cross.y * 100 - s}v${2 * s}`);
      svg().append(g);
    }
    tell(words);
  }

  // Where on the ground a point of the screen is.
  function ground(e) {
    const p = new DOMPoint(e.clientX, e.clientY).matrixTransform(svg().getScreenCTM().inverse());
    return { x: p.x / 100, y: -p.y / 100 };
  }
  function near(e) {
    let best = null, least = 24; // pixels: a finger's half
    for (const m of marks()) {
      const r = m.querySelector(".dot").getBoundingClientRect();
      const d = Math.hypot(r.x + r.width / 2 - e.clientX, r.y + r.height / 2 - e.clientY);
      if (d < least) [best, least] = [m, d];
    }
    return best;
  }

  // Posts upon the newest revision, one after the other, and shows what came back.
  async function posted(what, fields, then) {
    try {
      const body = new URLSearchParams({ base: document.querySelector('input[name="base"]').value, here: "pond" });
      for (const [k, v] of fields) body.append(k, v);
      const r = await fetch(stage.dataset.job + "/" + what + location.search, { method: "POST", body, keepalive: true });
      const page = new DOMParser().parseFromString(await r.text(), "text/html");
      if (r.status !== 200 && r.status !== 422) { document.open(); document.write(new XMLSerializer().serializeToString(page)); document.close(); return; }
      if (r.status === 422) { show((page.querySelector(".field .error, [role=alert], main p") || stage).textContent); return; }
      const id = CSS.escape("lf" + svg().dataset.list.replaceAll("/", "-")), fresh = page.querySelector("#" + id);
      replace(page);
      if (fresh) document.querySelector("#" + id)?.replaceWith(document.adoptNode(fresh));
      document.getElementById("last")?.classList.add("fresh");
      if (then) then();
      show();
    } catch { show(stage.dataset.lost); }
  }
  const post = (...x) => { queue = queue.then(() => posted(...x)); };

  const field = (i, name) => svg().dataset.list + "/" + i + "/" + name;
  function fieldsAt(i, p, side) { // the edits that bring a mark to a place
    if (!taped()) return [[field(i, "x"), text(p.x)], [field(i, "y"), text(p.y)]];
    return [[field(i, "at"), text(p.x)], [field(i, side), text(side === "left" ? p.y : -p.y)]];
  }
  function readings() { // along the tape, in order
    return marks().filter((m) => m.dataset.side === "left").map((m) => [Number(m.dataset.at), Number(m.dataset.x)]).sort((a, b) => a[0] - b[0]);
  }

  function place(p) {
    flush();
    p = { x: onGrid(p.x), y: onGrid(p.y) };
    queue = queue.then(async () => { // where it goes is asked when those before are in
      let to = marks().length, side = "";
      if (taped()) {
        side = p.y < 0 ? "right" : "left";
        const list = readings(), same = list.find(([, x]) => Math.abs(x - p.x) < Number(svg().dataset.fine) * 1.5);
        if (same) {
          await posted("set", [[field(same[0], side), text(Math.abs(p.y))]], () => { chosen = keys ? "" : same[0] + side; });
          return;
        }
        to = list.filter(([, x]) => x < p.x).length;
        if (list.length >= Number(svg().dataset.full)) { show(stage.dataset.full); return; }
      } else {
        const last = mark(chosen) ? Number(mark(chosen).dataset.at) : after;
        if (last >= 0 && last < to) to = last + 1;
        if (marks().length >= Number(svg().dataset.full)) { show(stage.dataset.full); return; }
      }
      await posted("add", [...fieldsAt("-", p, side), ["to", to]], () => { after = to; chosen = keys ? "" : to + side; });
    });
  }

  // Keeps a taped offset between its neighbours; whether it had to be kept back.
  function bounded(m, p) {
    if (!taped()) return [p, false];
    const i = Number(m.dataset.at), list = readings(), f = Number(svg().dataset.fine);
    const low = i > 0 ? list[i - 1][1] + f : -Infinity, high = i + 1 < list.length ? list[i + 1][1] - f : Infinity;
    const x = Math.min(Math.max(p.x, low), high);
    return [{ x, y: p.y }, x !== p.x];
  }

  // Moves a mark in the drawing; what is not moved stays as it was typed.
  function shift(m, p) {
    const [to, back] = bounded(m, p), side = m.dataset.side, was = waiting && waiting.key === keyOf(m) ? waiting.was : whereIs(m);
    m.dataset.x = to.x; m.dataset.y = to.y;
    for (const c of m.children) { c.setAttribute(c.tagName === "text" ? "x" : "cx", to.x * 100); c.setAttribute(c.tagName === "text" ? "y" : "cy", -to.y * 100); }
    const list = marks().map((k) => `${k.dataset.x * 100},${-k.dataset.y * 100}`).join(" ");
    for (const edge of svg().querySelectorAll(".edge, .raw")) edge.setAttribute("points", list); // straight until it is saved
    waiting = { key: keyOf(m), at: m.dataset.at, side, to, was };
    show(back ? stage.dataset.between : "");
  }
  function flush() { // sends the mark that was moved
    clearTimeout(timer);
    if (!waiting) return;
    const { at, side, to, was } = waiting;
    waiting = null;
    const moved = fieldsAt(at, to, side).filter((_, i) => (i === 0 ? to.x !== was.x : to.y !== was.y));
    if (moved.length) post("set", moved);
  }
  function step(dx, dy, small) {
    const f = small ? (svg().dataset.feet === "true" ? inch : 0.01) : Number(svg().dataset.fine), m = mark(chosen);
    if (m) {
      const p = whereIs(m);
      shift(m, { x: p.x + dx * f, y: p.y + dy * f });
      clearTimeout(timer);
      timer = setTimeout(flush, 500);
      return;
    }
    keys = true;
    if (!cross) middle();
    cross = { x: cross.x + dx * f, y: cross.y + dy * f };
    show();
  }
  function middle() {
    const b = svg().viewBox.baseVal;
    cross = { x: onGrid((b.x + b.width / 2) / 100), y: taped() ? 0 : onGrid(-(b.y + b.height / 2) / 100) };
  }
  function next() {
    flush();
    const list = marks(), i = list.findIndex((m) => keyOf(m) === chosen);
    chosen = list.length ? keyOf(list[(i + 1) % list.length]) : "";
    show();
  }
  function remove() {
    const m = mark(chosen);
    flush();
    if (!m) { show(); return; }
    post("remove", [["path", svg().dataset.list + "/" + m.dataset.at]], () => { after = Number(m.dataset.at) - 1; chosen = ""; });
  }
  function enter() {
    const m = mark(chosen);
    keys = true;
    if (m) { flush(); cross = whereIs(m); after = Number(m.dataset.at); chosen = ""; show(); return; }
    if (!cross) { middle(); show(); return; }
    place(cross);
  }

  stage.addEventListener("keydown", (e) => {
    const by = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    if (by) step(by[0], by[1], e.shiftKey);
    else if (e.key === "Enter") enter();
    else if (e.key === "n" || e.key === "N") next();
    else if (e.key === "Delete" || e.key === "Backspace") remove();
    else if (e.key === "Escape") { flush(); chosen = ""; show(); }
    else return;
    e.preventDefault();
  });
  tools.addEventListener("click", (e) => {
    const b = e.target.closest("button");
    if (!b) return;
    if (b.dataset.by) step(...b.dataset.by.split(" ").map(Number), false);
    else ({ next, remove, place: enter })[b.dataset.do]();
  });
  stage.addEventListener("pointerdown", (e) => {
    if (!e.isPrimary || e.button !== 0 || !e.target.closest("svg")) return;
    const m = near(e);
    grip = { x: e.clientX, y: e.clientY, key: m && keyOf(m), from: m && whereIs(m), moved: false };
    if (m) svg().setPointerCapture(e.pointerId);
  });
  stage.addEventListener("pointermove", (e) => {
    if (!grip || !e.isPrimary) return;
    if (Math.hypot(e.clientX - grip.x, e.clientY - grip.y) > 8) grip.moved = true;
    const m = grip.moved && mark(grip.key);
    if (!m) return;
    if (chosen !== grip.key) { flush(); chosen = grip.key; }
    const a = ground({ clientX: grip.x, clientY: grip.y }), b = ground(e);
    shift(m, { x: onGrid(grip.from.x + b.x - a.x), y: onGrid(grip.from.y + b.y - a.y) });
  });
  stage.addEventListener("pointercancel", () => { grip = null; flush(); });
  stage.addEventListener("pointerup", (e) => {
    const g = grip;
    grip = null;
    if (!g || !e.isPrimary) return;
    keys = false;
    if (g.moved) { flush(); return; }
    if (g.key) { flush(); chosen = g.key; after = Number(mark(g.key)?.dataset.at ?? -1); show(); return; }
    place(ground(e));
  });
  addEventListener("pagehide", flush);
  show();
})();
