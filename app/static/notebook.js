"use strict";
// A field that is left is posted at once; what the answer shows is put in place
// without the page being left. Everything works without this too.
document.documentElement.classList.add("live");
const tab = document.querySelector(".tabs [aria-current]");
if (tab) tab.closest("nav").scrollLeft = tab.offsetLeft - 60;
let queue = Promise.resolve();

function replace(page) {
  for (const part of page.querySelectorAll("[data-live]")) {
    const old = document.getElementById(part.id);
    if (old) old.replaceWith(document.adoptNode(part));
  }
  const base = page.querySelector('input[name="base"]');
  if (base) for (const b of document.querySelectorAll('input[name="base"]')) b.value = base.value;
}

function mark(form, page, names) {
  for (const name of names) {
    const now = form.elements[name], next = page.querySelector('[name="' + CSS.escape(name) + '"]:not([type=hidden])');
    const field = (now instanceof RadioNodeList ? now[now.length - 1] : now).closest(".field");
    const fresh = next && next.closest(".field");
    if (!field || !fresh) continue;
    const here = document.activeElement, at = field.contains(here) && here.id, caret = at && here.selectionStart;
    field.replaceWith(document.adoptNode(fresh));
    const again = at && document.getElementById(at);
    if (again) { again.focus(); if (caret != null && again.setSelectionRange) again.setSelectionRange(caret, caret); }
  }
}

async function send(form, body, names) {
  body.set("base", form.elements.base.value); // the newest, as the one before left it
  const r = await fetch(form.action + location.search, { method: "POST", body: new URLSearchParams(body) });
  const page = new DOMParser().parseFromString(await r.text(), "text/html");
  if (r.status !== 200 && r.status !== 422) { document.open(); document.write(new XMLSerializer().serializeToString(page)); document.close(); return; }
  mark(form, page, names);
  if (r.status === 200) replace(page);
  const last = document.getElementById("last");
  if (last && r.status === 200) last.classList.add("fresh");
}

function post(form, names, extra) {
  const all = new FormData(form), body = new FormData();
  for (const name of [...names, "here"]) for (const v of all.getAll(name)) body.append(name, v);
  if (extra) body.append(extra.name, extra.value);
  queue = queue.then(() => send(form, body, names)).catch(() => form.submit());
}

document.addEventListener("change", (e) => {
  const form = e.target.closest("form[data-edit]");
  if (form && e.target.name.startsWith("/")) post(form, [e.target.name]);
});

document.addEventListener("submit", (e) => {
  const form = e.target;
  if (!form.matches("form[data-edit]")) return;
  const step = e.submitter && e.submitter.name === "nudge" && e.submitter;
  e.preventDefault();
  if (step) post(form, [step.value.slice(step.value.indexOf(" ") + 1)], step);
  else if (document.activeElement.name && document.activeElement.name.startsWith("/")) post(form, [document.activeElement.name]);
});

// The hold timer of a glue step. It counts by the clock, so a phone that slept
// still tells the truth.
for (const timer of document.querySelectorAll("[data-timer]")) {
  const face = timer.querySelector("[role=timer]"), start = timer.querySelector("[data-start]");
  const all = Number(timer.dataset.timer);
  start.hidden = false;
  start.addEventListener("click", () => {
    const end = Date.now() + all * 1000;
    start.disabled = true;
    const show = () => {
      const left = Math.max(0, Math.ceil((end - Date.now()) / 1000));
      face.textContent = Math.floor(left / 60) + ":" + String(left % 60).padStart(2, "0");
      if (left > 0) { setTimeout(show, 250); return; }
      start.disabled = false;
      timer.classList.add("over");
      if (navigator.vibrate) navigator.vibrate([300, 100, 300]);
    };
    show();
  });
}

// Work that runs beside the page: look now and then how far it is. While it runs
// only its words are renewed, so that the keyboard stays where it was; what is
// done takes its place.
async function watch() {
  for (let now; (now = document.querySelector("[data-beside]"));) {
    await new Promise((go) => setTimeout(go, 900));
    const r = document.hidden ? null : await fetch(location.href).catch(() => null);
    if (!r || !r.ok) continue;
    const page = new DOMParser().parseFromString(await r.text(), "text/html");
    const next = page.getElementById(now.id);
    if (!next) return;
    if (next.matches("[data-beside]")) {
      const told = next.querySelectorAll("[data-told]");
      now.querySelectorAll("[data-told]").forEach((x, i) => { if (told[i]) x.textContent = told[i].textContent; });
    } else {
      now.replaceWith(document.adoptNode(next));
      for (const part of page.querySelectorAll("[data-after]")) document.getElementById(part.id)?.replaceWith(document.adoptNode(part));
    }
  }
}
watch();

// Levels played through time: the moments are fetched as they are wanted and
// shown one after the other. Nothing moves by itself; who wants less motion steps.
const player = document.getElementById("player");
if (player) {
  const last = Number(player.dataset.last), whole = Number(player.dataset.whole) || 1, kept = new Map();
  const slide = player.querySelector("[type=range]"), run = player.querySelector("[data-run]");
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  let at = Number(player.dataset.at), timer = 0;
  const say = run.textContent, fetchFrame = (k) => {
    if (!kept.has(k)) kept.set(k, fetch(player.dataset.play + "?at=" + k).then((r) => r.text()).then((t) => new DOMParser().parseFromString(t, "text/html").getElementById("frame")));
    return kept.get(k);
  };
  const show = async (k) => {
    at = Math.min(last, Math.max(0, k));
    const frame = await fetchFrame(at);
    document.getElementById("frame").replaceWith(frame.cloneNode(true));
    slide.value = at;
    slide.setAttribute("aria-valuetext", frame.querySelector("[data-clock]").textContent);
    history.replaceState(null, "", player.dataset.play + "?at=" + at);
    if (at < last) fetchFrame(at + 1);
    return Number(frame.dataset.seconds);
  };
  const stop = () => { clearTimeout(timer); timer = 0; run.textContent = say; };
  const go = async () => {
    const began = performance.now(), seconds = await show(at);
    if (!timer) return;
    if (at >= last) return stop();
    const pause = Math.max(90, Math.min(1500, seconds / whole * 12000)) - (performance.now() - began);
    timer = setTimeout(() => { at++; go(); }, Math.max(20, pause));
  };
  run.hidden = still.matches;
  still.addEventListener("change", () => { run.hidden = still.matches; stop(); });
  run.addEventListener("click", () => {
    if (timer) return stop();
    run.textContent = run.dataset.pause;
    if (at >= last) at = 0;
    timer = 1;
    go();
  });
  slide.addEventListener("input", () => { stop(); show(Number(slide.value)); });
  player.addEventListener("click", (e) => {
    const step = e.target.closest("[data-step]");
    if (!step) return;
    e.preventDefault();
    stop();
    show(at + Number(step.dataset.step));
  });
}
