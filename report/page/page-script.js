"use strict";
(() => {
  const data = JSON.parse(document.getElementById("drawing-data").textContent);
  const root = document.documentElement;
  root.classList.add("js");
  const by = (id) => document.getElementById(id);
  const svg = by("drawing");
  if (!svg || !data.pieces.length) return;
  for (const c of data.cases) {
    c.moved = c.moved.map((line) => line.map((p) => p.map((v) => v * c.moved_unit)));
  }
  const SVG = "http://www.w3.org/2000/svg";

  // -- small vectors --
  const add = (a, b, f = 1) => [a[0] + f * b[0], a[1] + f * b[1], a[2] + f * b[2]];
  const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
  const size = (a) => Math.sqrt(dot(a, a));
  const unit = (a) => { const s = size(a) || 1; return [a[0] / s, a[1] / s, a[2] / s]; };
  const escaped = (text) => text.replace(/[&<>"']/g, (c) => "&#" + c.charCodeAt(0) + ";");

  const number = (value, digits = 3) => {
    if (value === 0 || Math.abs(value) < 1e-12) return "0";
    const places = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
    const rounded = Number(value.toPrecision(digits));
    return rounded.toLocaleString("en-US", { minimumFractionDigits: Math.min(places, 6), maximumFractionDigits: Math.min(places, 6) });
  };

  // -- what is shown --
  const start = { yaw: data.view[0], pitch: data.view[1], zoom: 1 };
  const state = { ...start, loadCase: -1, shape: "drawn", times: 0, arrows: true, part: data.first, piece: -1 };

  const reach = (() => {
    const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
    const take = (p, r = 0) => p.forEach((x, i) => { low[i] = Math.min(low[i], x - r); high[i] = Math.max(high[i], x + r); });
    data.pieces.forEach((piece) => piece.line.forEach((p) => take(p)));
    if (data.wheels) data.wheels.forEach((p) => { take(add(p, [data.tire, 0, data.tire])); take(add(p, [data.tire, 0, data.tire], -1)); });
    return { size: Math.max(1e-6, size(high.map((x, i) => x - low[i]))) };
  })();

  const rim = (p) => Array.from({ length: 48 }, (_, i) => add(p, [data.tire * Math.cos(i * Math.PI / 24), 0, data.tire * Math.sin(i * Math.PI / 24)]));
  const radiusOf = (piece) => Math.max(...piece.sections.flat(2).map((p) => Math.hypot(p[0], p[1])));
  const around = (p, r) => [-r, r].flatMap((d) => [[p[0] + d, p[1], p[2]], [p[0], p[1] + d, p[2]], [p[0], p[1], p[2] + d]]);
  const outermost = [...data.pieces.flatMap((piece) => piece.line.flatMap((p) => around(p, radiusOf(piece)))), ...(data.wheels || []).flatMap(rim)];

  const band = (u) => (u === null ? 5 : u === undefined || u < 0 ? 6 : u < 0.25 ? 0 : u < 0.5 ? 1 : u < 0.75 ? 2 : u <= 1 ? 3 : 4);
  const utilizationOf = (part) => {
    const row = data.parts[part];
    return state.loadCase < 0 ? row.worst : row.cases[state.loadCase];
  };

  const shownCase = () => data.cases[Math.max(0, state.loadCase)];
  const displacement = () => {
    if (state.shape === "drawn" || state.loadCase < 0) return null;
    if (state.shape === "moved") return shownCase().moved.length ? shownCase().moved : null;
    return shownCase().modes[Number(state.shape)].shape;
  };
  const largestOf = (lines) => Math.max(1e-12, ...lines.flat().map(size));
  // A tenth of the drawing, in round figures.
  const magnification = (lines) => {
    if (!lines) return 0;
    const wanted = (state.shape === "moved" ? 0.06 : 0.08) * reach.size / largestOf(lines);
    if (state.shape !== "moved") return wanted;
    if (state.times) return state.times;
    if (wanted <= 1) return 1;
    const ten = 10 ** Math.floor(Math.log10(wanted));
    return (wanted >= 5 * ten ? 5 : wanted >= 2 * ten ? 2 : 1) * ten;
  };

  // -- solid pieces: every section is a list of convex outlines, swept along the line --
  const sweep = (piece, line, faces, kind, index) => {
    const n = line.length;
    const rings = line.map((p, i) => {
      const t = unit(add(line[Math.min(n - 1, i + 1)], line[Math.max(0, i - 1)], -1));
      const y = unit(add(piece.y[i], t, -dot(piece.y[i], t)));
      const z = cross(t, y);
      const outlines = piece.sections.length === 1 ? piece.sections[0] : piece.sections[i];
      return outlines.map((o) => o.map(([a, b]) => add(add(p, y, a), z, b)));
    });
    for (let i = 0; i + 1 < n; ++i) {
      if (size(add(line[i], line[i + 1], -1)) < 1e-9) continue;
      rings[i].forEach((near, k) => {
        const far = rings[i + 1][k];
        for (let j = 0; j < near.length; ++j) {
          const m = (j + 1) % near.length;
          faces.push({ points: [near[j], near[m], far[m], far[j]], kind: near.length > 6 ? kind : kind + " flat", index });
        }
      });
    }
    rings[0].forEach((o) => faces.push({ points: o.slice().reverse(), kind: kind + " flat", index }));
    rings[n - 1].forEach((o) => faces.push({ points: o, kind: kind + " flat", index }));
  };

  const context = () => {
    if (!data.wheels) return [];
    const [left, right] = data.wheels;
    const ring = [];
    for (let i = 0; i < 12; ++i) ring.push([0.04 * Math.cos(i * Math.PI / 6), 0.04 * Math.sin(i * Math.PI / 6)]);
    return [{ line: [0, 1, 2, 3, 4, 5, 6, 7, 8].map((i) => add(right, add(left, right, -1), i / 8)), y: Array(9).fill([1, 0, 0]), sections: [[ring]] }];
  };

  let drawnText = "";
  const draw = () => {
    const width = Math.max(280, Math.round(svg.clientWidth || 720));
    const height = Math.round(Math.min(0.6 * width, 500) + (width < 480 ? 70 : 0));
    const c = [Math.cos(state.pitch) * Math.cos(state.yaw), Math.cos(state.pitch) * Math.sin(state.yaw), Math.sin(state.pitch)];
    const right = [-Math.sin(state.yaw), Math.cos(state.yaw), 0];
    const up = cross(c, right);
    // Fitted to the box as it is seen, so that nothing falls off the sheet.
    let x0 = Infinity, x1 = -Infinity, y0 = Infinity, y1 = -Infinity;
    for (const p of outermost) {
      const x = dot(right, p), y = dot(up, p);
      x0 = Math.min(x0, x); x1 = Math.max(x1, x); y0 = Math.min(y0, y); y1 = Math.max(y1, y);
    }
    const fits = Math.min((0.86 * width - 24) / (x1 - x0 || 1e-6), (0.82 * height - 24) / (y1 - y0 || 1e-6));
    const scale = state.zoom * fits;
    const flat = (p) => [0.5 * width + scale * (dot(right, p) - 0.5 * (x0 + x1)), 0.5 * height - scale * (dot(up, p) - 0.5 * (y0 + y1))];
    const path = (points, close) => points.map((p, i) => (i ? "L" : "M") + flat(p).map((x) => x.toFixed(1)).join(" ")).join("") + (close ? "Z" : "");

    const lines = displacement();
    const times = magnification(lines);
    const faces = [];
    const out = [];
    context().forEach((piece) => sweep(piece, piece.line, faces, "u6 context", -1));
    data.pieces.forEach((piece, i) => {
      const line = lines ? piece.line.map((p, k) => add(p, lines[i][k], times)) : piece.line;
      sweep(piece, line, faces, "u" + band(utilizationOf(piece.part)), i);
      if (lines) out.push(`<path class="ghost" d="${path(piece.line)}"/>`);
    });
    if (data.wheels) {
      data.wheels.forEach((p) => out.push(`<path class="wheel" d="${path(rim(p), true)}"/>`));
    }
    const light = unit(add(add(c, right, -0.5), up, 0.9));
    const seen = [];
    for (const face of faces) {
      const p = face.points;
      const normal = cross(add(p[1], p[0], -1), add(p[2], p[0], -1));
      const s = size(normal);
      if (s < 1e-14) continue;
      const toward = dot(normal, c) / s;
      if (toward <= 0) continue;
      face.depth = p.reduce((sum, q) => sum + dot(q, c), 0) / p.length;
      face.shade = Math.min(7, Math.max(0, Math.round(7 * (1 - dot(normal, light) / s))));
      seen.push(face);
    }
    seen.sort((a, b) => a.depth - b.depth);
    const begun = new Set();
    for (const f of seen) {
      if (f.index >= 0 && data.pieces[f.index].part === state.part && !begun.has(f.index)) {
        begun.add(f.index);
        out.push(chosenLine(data.pieces[f.index], lines ? lines[f.index] : null, times, path, scale, f.index === state.piece));
      }
      const piece = f.index >= 0 ? ` data-piece="${f.index}"` : "";
      out.push(`<path class="f ${f.kind} k${f.shade}"${piece} d="${path(f.points, true)}"/>`);
    }
    if (state.arrows && state.loadCase >= 0) drawArrows(out, flat, width, height);
    else namePieces(out, lines, times, flat, width);
    drawAxes(out, right, up, height);
    const text = out.join("");
    svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
    if (text !== drawnText) svg.innerHTML = text;
    drawnText = text;
    say(lines, times);
  };

  /// A band behind a piece, somewhat wider than it.
  const chosenLine = (piece, moved, times, path, scale, only) => {
    const points = moved ? piece.line.map((p, k) => add(p, moved[k], times)) : piece.line;
    const wide = 2 * radiusOf(piece);
    const round = piece.sections[0][0].length > 6 ? " round" : "";
    return `<path class="chosen-line${round}" stroke-width="${(wide * scale + (only ? 12 : 7)).toFixed(1)}" d="${path(points)}"/>`;
  };

  /// Pieces of one part have one color: their names tell them apart.
  const namePieces = (out, lines, times, flat, width) => {
    const named = data.pieces.map((piece, i) => [piece, i]).filter(([piece]) => piece.part === state.part && piece.name);
    if (named.length < 2) return;
    const taken = [];
    named.sort(([, a], [, b]) => (b === state.piece) - (a === state.piece));
    for (const [piece, i] of named) {
      const middle = Math.floor(piece.line.length / 2);
      const at = lines ? add(piece.line[middle], lines[i][middle], times) : piece.line[middle];
      const half = 3.3 * piece.name.length;
      const spot = flat(at);
      const x = Math.min(Math.max(spot[0], half + 4), Math.max(half + 4, width - half - 4));
      let y = spot[1] + 4;
      for (let tries = 0; tries < 8 && taken.some((t) => Math.abs(t.y - y) < 14 && Math.abs(t.x - x) < t.half + half); ++tries) y += 14;
      taken.push({ x, y, half });
      out.push(`<text class="piece-name${i === state.piece ? " only" : ""}" text-anchor="middle" x="${x.toFixed(1)}" y="${y.toFixed(1)}">${escaped(piece.name)}</text>`);
    }
  };

  const drawArrows = (out, flat, width, height) => {
    const loads = shownCase().loads;
    const largest = Math.max(1e-9, ...loads.map((l) => size(l.force)));
    const labels = [];
    for (const load of loads) {
      const share = size(load.force) / largest;
      if (share < 0.02) continue;
      const long = 0.17 * reach.size * (0.25 + 0.75 * share);
      const to = load.at, from = add(to, unit(load.force), -long);
      const [x1, y1] = flat(from), [x2, y2] = flat(to);
      const length = Math.hypot(x2 - x1, y2 - y1);
      const kind = load.holds ? "hold" : "act";
      if (length < 6) continue;
      const ux = (x2 - x1) / length, uy = (y2 - y1) / length;
      const bx = x2 - 11 * ux, by2 = y2 - 11 * uy;
      const f = (x) => x.toFixed(1);
      out.push(`<path class="halo" d="M${f(x1)} ${f(y1)}L${f(bx)} ${f(by2)}"/><path class="${kind} shaft" d="M${f(x1)} ${f(y1)}L${f(bx)} ${f(by2)}"/>` +
        `<path class="${kind}" d="M${f(x2)} ${f(y2)}L${f(bx - 4.5 * uy)} ${f(by2 + 4.5 * ux)}L${f(bx + 4.5 * uy)} ${f(by2 - 4.5 * ux)}Z"/>`);
      labels.push({ x: x1, y: uy < 0 ? y1 + 14 : y1 - 6, text: `${load.what} ${load.shown}`, share });
    }
    // Larger forces first; a name that would lie on another's moves down a line.
    const taken = [];
    labels.sort((a, b) => b.share - a.share);
    for (const label of labels) {
      const half = 3.1 * label.text.length;
      label.x = Math.min(Math.max(label.x, half + 4), Math.max(half + 4, width - half - 4));
      label.y = Math.min(Math.max(label.y, 14), height - 6);
      for (let tries = 0; tries < 8 && taken.some((t) => Math.abs(t.y - label.y) < 14 && Math.abs(t.x - label.x) < t.half + half); ++tries) label.y += 14;
      taken.push({ x: label.x, y: label.y, half });
      out.push(`<text text-anchor="middle" x="${label.x.toFixed(1)}" y="${label.y.toFixed(1)}">${escaped(label.text)}</text>`);
    }
  };

  const drawAxes = (out, right, up, height) => {
    const x0 = 58, y0 = height - 40;
    [["forward", [1, 0, 0]], ["left", [0, 1, 0]], ["up", [0, 0, 1]]].forEach(([name, axis]) => {
      const dx = 28 * dot(axis, right), dy = -28 * dot(axis, up);
      out.push(`<path class="axis" d="M${x0} ${y0}L${(x0 + dx).toFixed(1)} ${(y0 + dy).toFixed(1)}"/>`);
      if (Math.hypot(dx, dy) > 8) out.push(`<text class="axis-name" text-anchor="middle" x="${(x0 + 1.35 * dx).toFixed(1)}" y="${(y0 + 1.35 * dy + 4).toFixed(1)}">${name}</text>`);
    });
  };

  const say = (lines, times) => {
    let words = state.loadCase < 0 ? "Each part at its worst over all load cases." : `${shownCase().name}; ${shownCase().set}.`;
    if (lines && state.shape === "moved") {
      const most = largestOf(lines) / data.units.length.si;
      words += ` Deformed shape magnified ${times} times; the farthest point moves ${number(most)} ${data.units.length.name}.`;
    } else if (lines) {
      const mode = shownCase().modes[Number(state.shape)];
      words += ` Buckling shape at ${number(mode.factor)} times the load; its size says nothing.`;
    }
    if (state.piece >= 0 && data.pieces[state.piece].name) words += ` Chosen: ${data.pieces[state.piece].name}.`;
    by("said").textContent = words;
  };

  let pending = false;
  const later = () => {
    if (pending) return;
    pending = true;
    requestAnimationFrame(() => { pending = false; draw(); });
  };

  // -- choosing --
  const choosePart = (part, piece = -1) => {
    if (!(part in data.parts)) return;
    state.part = part;
    state.piece = piece;
    document.querySelectorAll("[data-part]").forEach((e) => e.classList.toggle("chosen", e.dataset.part === part));
    const select = by("choose-part");
    if (select) select.value = part;
    const first = data.pieces.findIndex((p) => p.part === part);
    if (piece >= 0) by("choose-piece").value = piece;
    else if (first >= 0 && data.pieces[Number(by("choose-piece").value)].part !== part) by("choose-piece").value = first;
    markCells();
    later();
    diagrams();
  };

  const markCells = () => document.querySelectorAll(".heat button").forEach((b) =>
    b.setAttribute("aria-pressed", String(b.dataset.choose === state.part && Number(b.dataset.case) === state.loadCase)));

  const shapes = () => {
    const select = by("choose-shape");
    const options = ['<option value="drawn">as drawn</option>'];
    if (state.loadCase >= 0) {
      if (shownCase().moved.length) options.push('<option value="moved">deformed</option>');
      shownCase().modes.forEach((m, i) => options.push(`<option value="${i}">buckling ${i + 1}: ${escaped(m.what)} at ${number(m.factor)} times</option>`));
    }
    select.innerHTML = options.join("");
    select.value = "drawn";
    select.disabled = options.length < 2;
    state.shape = "drawn";
    by("choose-times").disabled = true;
  };

  const chooseCase = (index) => {
    state.loadCase = index;
    by("choose-case").value = index;
    shapes();
    if (index >= 0) by("diagram-case").value = index;
    markCells();
    later();
    diagrams();
  };

  // -- forces along a part --
  const charts = [
    { name: "N, pull and push", unit: "force", keys: [[0, "N"]] },
    { name: "V, shear", unit: "force", keys: [[1, "Vy"], [2, "Vz"]] },
    { name: "M, bending", unit: "moment", keys: [[4, "My"], [5, "Mz"]] },
    { name: "T, torque", unit: "moment", keys: [[3, "T"]] }];

  const chartOf = (chart, piece, forces) => {
    const u = data.units[chart.unit];
    const w = 380, h = 150, x0 = 8, y0 = 20, x1 = w - 8, y1 = h - 22;
    const along = piece.along, last = along[along.length - 1] || 1;
    const all = chart.keys.flatMap(([k]) => forces.map((f) => f[k] / u.si));
    const low = Math.min(0, ...all), high = Math.max(0, ...all);
    const span = high - low || 1;
    const X = (s) => x0 + (x1 - x0) * s / last, Y = (v) => y1 - (y1 - y0) * (v - low) / span;
    const nothing = Math.max(Math.abs(low), Math.abs(high)) < 1e-6;
    const parts = [];
    chart.keys.forEach(([k], j) => {
      const points = forces.map((f, i) => `${X(along[i]).toFixed(1)} ${Y(nothing ? 0 : f[k] / u.si).toFixed(1)}`);
      if (!j) parts.push(`<path class="fill" d="M${x0} ${Y(0).toFixed(1)}L${points.join("L")}L${x1} ${Y(0).toFixed(1)}Z"/>`);
      parts.push(`<path class="curve${j ? " second" : ""}" d="M${points.join("L")}"/>`);
    });
    const words = chart.keys.map(([k, name]) => {
      const values = forces.map((f) => f[k] / u.si);
      const show = (v) => (nothing ? "0" : number(v));
      return `${name} ${show(Math.min(...values))} to ${show(Math.max(...values))} ${u.name}`;
    });
    const dashes = chart.keys.length > 1 ? ` (${chart.keys[1][1]} dashed)` : "";
    return `<figure class="chart"><figcaption><b>${chart.name}</b>${dashes}<br>${words.join("; ")}</figcaption>` +
      `<svg viewBox="0 0 ${w} ${h}" role="img" aria-label="${chart.name}: ${words.join("; ")}">${parts.join("")}` +
      `<path class="zero" d="M${x0} ${Y(0).toFixed(1)}H${x1}"/>` +
      `<text x="${x0}" y="${h - 5}">0</text><text x="${x1}" y="${h - 5}" text-anchor="end">${number(last / data.units.length.si)} ${data.units.length.name}</text></svg></figure>`;
  };

  const diagrams = () => {
    const index = Number(by("choose-piece").value);
    const loadCase = data.cases[Number(by("diagram-case").value)];
    const piece = data.pieces[index];
    by("diagrams").innerHTML = loadCase && loadCase.forces.length
      ? charts.map((chart) => chartOf(chart, piece, loadCase.forces[index])).join("")
      : "<p>This load case has no solution: see what is not decided.</p>";
    // On paper the choosers are gone: what was chosen is said.
    const chosen = (id) => by(id).selectedOptions[0]?.textContent ?? "";
    const title = document.createElement("p");
    title.className = "charts-of";
    title.textContent = `${chosen("choose-piece")} in ${chosen("diagram-case")}`;
    by("diagrams").prepend(title);
  };

  // -- events --
  by("choose-case").addEventListener("change", (e) => chooseCase(Number(e.target.value)));
  by("choose-part").addEventListener("change", (e) => choosePart(e.target.value));
  by("choose-shape").addEventListener("change", (e) => {
    state.shape = e.target.value;
    by("choose-times").disabled = state.shape !== "moved";
    later();
  });
  by("choose-times").addEventListener("change", (e) => { state.times = Number(e.target.value); later(); });
  by("show-arrows").addEventListener("change", (e) => { state.arrows = e.target.checked; later(); });
  by("choose-piece").addEventListener("change", (e) => choosePart(data.pieces[Number(e.target.value)].part, Number(e.target.value)));
  by("diagram-case").addEventListener("change", diagrams);
  document.querySelectorAll("button[data-choose]").forEach((b) => b.addEventListener("click", () => {
    if (b.dataset.case !== undefined) chooseCase(Number(b.dataset.case));
    choosePart(b.dataset.choose);
    if (b.dataset.case !== undefined) by("assembly").scrollIntoView({ block: "start" });
  }));
  document.querySelectorAll("button[data-view]").forEach((b) => b.addEventListener("click", () => {
    const right = Math.PI / 2;
    const views = { corner: data.view, front: [0, 0], side: [right, 0], top: [0, right - 1e-6] };
    [state.yaw, state.pitch] = views[b.dataset.view];
    state.zoom = 1;
    later();
  }));

  // One stop of the Tab key for the whole map: arrow keys go from cell to cell.
  document.querySelectorAll(".heat button").forEach((b, i) => { b.tabIndex = i ? -1 : 0; });
  document.querySelector(".heat")?.addEventListener("keydown", (e) => {
    const [across, down] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key] ?? [0, 0];
    if ((!across && !down) || e.ctrlKey || e.altKey || e.metaKey) return;
    e.preventDefault();
    const rows = [...e.currentTarget.tBodies[0].rows];
    let x = e.target.closest("td").cellIndex, y = rows.indexOf(e.target.closest("tr"));
    let next = null;
    do { x += across; y += down; next = rows[y]?.cells[x]?.querySelector("button"); } while (!next && rows[y]?.cells[x] && x > 0);
    if (!next) return;
    e.currentTarget.querySelectorAll('button[tabindex="0"]').forEach((b) => { b.tabIndex = -1; });
    next.tabIndex = 0;
    next.focus();
  });

  const turn = (dx, dy) => {
    state.yaw -= dx;
    state.pitch = Math.min(Math.PI / 2 - 1e-6, Math.max(-Math.PI / 2 + 1e-6, state.pitch + dy));
    later();
  };
  const zoom = (factor) => { state.zoom = Math.min(12, Math.max(0.4, state.zoom * factor)); later(); };
  const pointers = new Map();
  let moved = 0, under = null;
  svg.addEventListener("pointerdown", (e) => {
    if (!pointers.size) { moved = 0; under = e.target.dataset ? e.target.dataset.piece : undefined; }
    pointers.set(e.pointerId, [e.clientX, e.clientY]);
    svg.setPointerCapture(e.pointerId);
  });
  svg.addEventListener("pointermove", (e) => {
    const before = pointers.get(e.pointerId);
    if (!before) return;
    const others = [...pointers].filter(([id]) => id !== e.pointerId);
    const now = [e.clientX, e.clientY];
    if (others.length) {
      const other = others[0][1];
      zoom(Math.hypot(now[0] - other[0], now[1] - other[1]) / Math.max(1, Math.hypot(before[0] - other[0], before[1] - other[1])));
    } else {
      turn((now[0] - before[0]) * 0.008, (now[1] - before[1]) * 0.008);
    }
    moved += Math.abs(now[0] - before[0]) + Math.abs(now[1] - before[1]);
    pointers.set(e.pointerId, now);
  });
  const released = (e) => {
    pointers.delete(e.pointerId);
    if (e.type === "pointerup" && moved < 5 && under !== undefined && under !== null) choosePart(data.pieces[Number(under)].part, Number(under));
  };
  svg.addEventListener("pointerup", released);
  svg.addEventListener("pointercancel", released);
  svg.addEventListener("wheel", (e) => {
    if (!e.ctrlKey && document.activeElement !== svg) return;
    e.preventDefault();
    zoom(Math.exp(-0.002 * e.deltaY));
  }, { passive: false });
  svg.addEventListener("keydown", (e) => {
    const step = Math.PI / 36;
    const keys = {
      ArrowLeft: () => turn(step, 0), ArrowRight: () => turn(-step, 0), ArrowUp: () => turn(0, -step), ArrowDown: () => turn(0, step),
      "+": () => zoom(1.2), "=": () => zoom(1.2), "-": () => zoom(1 / 1.2), 0: () => { Object.assign(state, start); later(); }
    };
    if (e.ctrlKey || e.altKey || e.metaKey || !keys[e.key]) return;
    e.preventDefault();
    keys[e.key]();
  });
  new ResizeObserver(later).observe(svg.parentElement);

  chooseCase(-1);
  choosePart(data.first);
  draw();
})();
