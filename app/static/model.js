"use strict";
// Shows a model (glTF 2.0, binary, as render/glb writes it) and nothing else:
// turn, come nearer, tap a part for its name. Asks for the model only. Without
// WebGL the drawing in the page stays.
const box = document.getElementById("model");
const canvas = box.querySelector("canvas"), told = document.getElementById("told");
const gl = canvas.getContext("webgl", { antialias: true, alpha: true });

// read takes the file apart: its text, and each node's corners and faces.
function read(buffer) {
  const head = new DataView(buffer);
  if (head.getUint32(0, true) !== 0x46546c67) throw new Error("no model");
  const long = head.getUint32(12, true);
  const doc = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 20, long)));
  const start = 20 + long + 8;
  const array = (i) => {
    const a = doc.accessors[i], kind = { 5123: Uint16Array, 5125: Uint32Array, 5126: Float32Array }[a.componentType];
    return new kind(buffer, start + doc.bufferViews[a.bufferView].byteOffset, a.count * (a.type === "VEC3" ? 3 : 1));
  };
  return doc.nodes.map((n) => {
    const p = doc.meshes[n.mesh].primitives[0], m = doc.materials[p.material];
    return { name: n.name, ...n.extras, points: array(p.attributes.POSITION), normals: array(p.attributes.NORMAL), faces: array(p.indices), color: m.pbrMetallicRoughness.baseColorFactor };
  });
}

function program() {
  const part = (kind, text) => { const s = gl.createShader(kind); gl.shaderSource(s, text); gl.compileShader(s); return s; };
  const p = gl.createProgram();
  gl.attachShader(p, part(gl.VERTEX_SHADER, "attribute vec3 p,n;uniform mat4 m;uniform vec3 eye;varying float l;void main(){gl_Position=m*vec4(p,1.);vec3 e=normalize(eye-p);l=.45+.35*abs(dot(n,e))+.2*max(0.,n.y);}"));
  gl.attachShader(p, part(gl.FRAGMENT_SHADER, "precision mediump float;uniform vec4 c;varying float l;void main(){gl_FragColor=vec4(pow(c.rgb*l,vec3(.4545))*c.a,c.a);}"));
  gl.linkProgram(p);
  if (!gl.getProgramParameter(p, gl.LINK_STATUS)) throw new Error("no program");
  return p;
}

function show(parts) {
  const p = program(), at = (name) => gl.getUniformLocation(p, name);
  const place = { m: at("m"), c: at("c"), eye: at("eye"), p: gl.getAttribLocation(p, "p"), n: gl.getAttribLocation(p, "n") };
  const low = [1 / 0, 1 / 0, 1 / 0], high = [-1 / 0, -1 / 0, -1 / 0];
  for (const x of parts) {
    for (let i = 0; i < x.points.length; i++) { low[i % 3] = Math.min(low[i % 3], x.points[i]); high[i % 3] = Math.max(high[i % 3], x.points[i]); }
    const put = (kind, data) => { const b = gl.createBuffer(); gl.bindBuffer(kind, b); gl.bufferData(kind, data, gl.STATIC_DRAW); return b; };
    x.wide = x.faces instanceof Uint32Array;
    if (x.wide && !gl.getExtension("OES_element_index_uint")) throw new Error("too large");
    x.buffers = [put(gl.ARRAY_BUFFER, x.points), put(gl.ARRAY_BUFFER, x.normals), put(gl.ELEMENT_ARRAY_BUFFER, x.faces)];
  }
  const mid = low.map((v, i) => (v + high[i]) / 2), size = Math.hypot(...low.map((v, i) => high[i] - v));
  const first = { turn: -0.6, tilt: 0.5, far: size * 1.45 }, view = { ...first };
  let chosen = null, eye, axes;

  // look sets the eye and the three directions of the picture.
  function look() {
    const c = Math.cos(view.tilt), back = [Math.sin(view.turn) * c, Math.sin(view.tilt), Math.cos(view.turn) * c];
    const right = [Math.cos(view.turn), 0, -Math.sin(view.turn)];
    const up = [back[1] * right[2] - back[2] * right[1], back[2] * right[0] - back[0] * right[2], back[0] * right[1] - back[1] * right[0]];
    eye = mid.map((v, i) => v + back[i] * view.far);
    axes = [right, up, back];
  }
  const narrow = () => 2.4 * Math.min(1, canvas.width / canvas.height); // one over the tangent of half the angle of view
  function matrix() {
    const f = narrow(), wide = f * canvas.height / canvas.width, near = size / 50, end = view.far + size * 2;
    const out = new Float32Array(16);
    const shift = axes.map((a) => -a.reduce((s, v, i) => s + v * eye[i], 0));
    for (let i = 0; i < 4; i++) {
      const at = (r) => (i < 3 ? axes[r][i] : shift[r]);
      out[4 * i] = at(0) * wide; out[4 * i + 1] = at(1) * f; out[4 * i + 3] = -at(2);
      out[4 * i + 2] = at(2) * (end + near) / (near - end) + (i === 3 ? 2 * end * near / (near - end) : 0);
    }
    return out;
  }

  let asked = false;
  function draw() {
    if (asked) return;
    asked = true;
    requestAnimationFrame(() => {
      asked = false;
      const scale = window.devicePixelRatio || 1, w = Math.round(canvas.clientWidth * scale), h = Math.round(canvas.clientHeight * scale);
      if (canvas.width !== w || canvas.height !== h) { canvas.width = w; canvas.height = h; }
      look();
      gl.viewport(0, 0, w, h);
      gl.clearColor(0, 0, 0, 0);
      gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
      gl.enable(gl.DEPTH_TEST);
      gl.useProgram(p);
      gl.uniformMatrix4fv(place.m, false, matrix());
      gl.uniform3fv(place.eye, eye);
      gl.enableVertexAttribArray(place.p);
      gl.enableVertexAttribArray(place.n);
      for (const x of parts) {
        const through = x.color[3] < 1;
        if (through) { gl.enable(gl.BLEND); gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA); gl.depthMask(false); }
        gl.uniform4fv(place.c, x === chosen ? [0.85, 0.35, 0.02, 1] : x.color);
        gl.bindBuffer(gl.ARRAY_BUFFER, x.buffers[0]); gl.vertexAttribPointer(place.p, 3, gl.FLOAT, false, 0, 0);
        gl.bindBuffer(gl.ARRAY_BUFFER, x.buffers[1]); gl.vertexAttribPointer(place.n, 3, gl.FLOAT, false, 0, 0);
        gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, x.buffers[2]);
        gl.drawElements(gl.TRIANGLES, x.faces.length, x.wide ? gl.UNSIGNED_INT : gl.UNSIGNED_SHORT, 0);
        if (through) { gl.disable(gl.BLEND); gl.depthMask(true); }
      }
      canvas.dataset.drawn = String(Number(canvas.dataset.drawn || 0) + 1);
    });
  }

  function choose(x) {
    chosen = x;
    told.textContent = x ? x.title || x.name : told.dataset.hint;
    for (const b of box.querySelectorAll("button[data-name]")) b.setAttribute("aria-pressed", String(!!x && b.dataset.name === x.name));
    draw();
  }

  // hit gives the nearest part along the line of sight through a point (Möller
  // and Trumbore 1997).
  function hit(cx, cy) {
    const r = canvas.getBoundingClientRect(), f = narrow();
    const sx = (2 * (cx - r.left) / r.width - 1) * r.width / r.height / f, sy = (1 - 2 * (cy - r.top) / r.height) / f;
    const d = [0, 1, 2].map((i) => axes[0][i] * sx + axes[1][i] * sy - axes[2][i]);
    const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
    const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2], less = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
    let best = 1 / 0, found = null;
    for (const x of parts) {
      if (x.color[3] < 1) continue;
      const corner = (i) => x.points.subarray(3 * x.faces[i], 3 * x.faces[i] + 3);
      for (let i = 0; i < x.faces.length; i += 3) {
        const a = corner(i), e1 = less(corner(i + 1), a), e2 = less(corner(i + 2), a), q = cross(d, e2), det = dot(e1, q);
        if (Math.abs(det) < 1e-14) continue;
        const s = less(eye, a), u = dot(s, q) / det, g = cross(s, e1), v = dot(d, g) / det, t = dot(e2, g) / det;
        if (u >= 0 && v >= 0 && u + v <= 1 && t > 0 && t < best) { best = t; found = x; }
      }
    }
    return found;
  }

  const nearer = (k) => { view.far = Math.min(size * 4, Math.max(size * 0.25, view.far * k)); draw(); };
  const turn = (x, y) => { view.turn -= x; view.tilt = Math.min(1.55, Math.max(-1.2, view.tilt + y)); draw(); };
  const down = new Map();
  let moved = 0;
  canvas.addEventListener("pointerdown", (e) => { canvas.setPointerCapture(e.pointerId); if (!down.size) moved = 0; down.set(e.pointerId, e); });
  canvas.addEventListener("pointermove", (e) => {
    const old = down.get(e.pointerId);
    if (!old) return;
    const apart = () => { const [a, b] = [...down.values()]; return Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY); };
    const before = down.size === 2 && apart();
    moved += Math.hypot(e.clientX - old.clientX, e.clientY - old.clientY);
    down.set(e.pointerId, e);
    if (before) nearer(before / Math.max(1, apart()));
    else turn((e.clientX - old.clientX) * 0.008, (e.clientY - old.clientY) * 0.008);
  });
  const up = (e) => { if (down.delete(e.pointerId) && !down.size && moved < 6 && e.type === "pointerup") choose(hit(e.clientX, e.clientY)); };
  canvas.addEventListener("pointerup", up);
  canvas.addEventListener("pointercancel", up);
  canvas.addEventListener("wheel", (e) => { e.preventDefault(); nearer(Math.exp(e.deltaY * 0.001)); }, { passive: false });
  const keys = { ArrowLeft: () => turn(0.15, 0), ArrowRight: () => turn(-0.15, 0), ArrowUp: () => turn(0, 0.12), ArrowDown: () => turn(0, -0.12), "+": () => nearer(0.85), "=": () => nearer(0.85), "-": () => nearer(1.18), Home: () => { Object.assign(view, first); draw(); }, Escape: () => choose(null) };
  canvas.addEventListener("keydown", (e) => { const f = keys[e.key]; if (f && !e.ctrlKey && !e.metaKey && !e.altKey) { e.preventDefault(); f(); } });
  for (const b of box.querySelectorAll("button[data-key]")) b.addEventListener("click", () => keys[b.dataset.key]());
  for (const b of box.querySelectorAll("button[data-name]")) b.addEventListener("click", () => { const x = parts.find((y) => y.name === b.dataset.name); choose(x === chosen ? null : x); });
  canvas.addEventListener("webglcontextlost", (e) => { e.preventDefault(); box.hidden = true; document.getElementById("flat").hidden = false; });
  new ResizeObserver(draw).observe(canvas);
  choose(null);
}

(async () => {
  if (!gl) return;
  const r = await fetch(box.dataset.model);
  if (!r.ok) throw new Error("no model");
  const parts = read(await r.arrayBuffer());
  box.hidden = false;
  try { show(parts); } catch (e) { box.hidden = true; throw e; }
  document.getElementById("flat").hidden = true;
})();
