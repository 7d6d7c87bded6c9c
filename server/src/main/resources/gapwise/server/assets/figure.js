// Points and marks of axes are set on the picture of a figure, with a mouse, a finger or the keys, and
// stand in the fields beside it, which work without this script. The server alone tells what they make.
(() => {
  "use strict";
  const SVG = "http://www.w3.org/2000/svg";
  const MARKS = ["x1", "x2", "y1", "y2"];
  const MOST = 1000;
  const NEAR = 3;
  const NUMBER = /^[-−]?\d{1,9}([.,]\d{1,20})?$/;
  const field = (name) => document.getElementById(name);
  const form = () => document.getElementById("figure");
  let points = [];
  let chosen = -1;
  let cross = null;
  const before = [];

  const number = (text) => {
    const stripped = text.trim();
    return NUMBER.test(stripped) ? parseFloat(stripped.replace(",", ".").replace("−", "-")) : NaN;
  };
  const place = (text) => {
    const parts = text.trim().split(/\s+/).map(number);
    return parts.length === 2 && parts.every(Number.isFinite) ? { x: parts[0], y: parts[1] } : null;
  };
  const short = (value) => String(parseFloat(value.toFixed(4)));
  const say = (words) => { field("pointer").textContent = words; };
  const hand = () => form().elements.hand.value;
  const take = (name) => { form().elements.hand.value = name; };

  // The axes, with the numbers as they are printed beside them; null while they are not whole.
  const axes = () => {
    const axis = (name) => {
      const one = { scale: field(name + "-scale").value, a: place(field(name + "1-at").value), b: place(field(name + "2-at").value), from: number(field(name + "1-value").value), to: number(field(name + "2-value").value) };
      const whole = one.a && one.b && Number.isFinite(one.from) && Number.isFinite(one.to) && one.from !== one.to;
      return whole && (one.scale !== "log" || (one.from > 0 && one.to > 0)) ? one : null;
    };
    const x = axis("x");
    const y = axis("y");
    if (!x || !y) { return null; }
    const turn = (x.b.x - x.a.x) * (y.b.y - y.a.y) - (x.b.y - x.a.y) * (y.b.x - y.a.x);
    return Math.abs(turn) < 1 ? null : { x, y, turn };
  };
  const valueAt = (axis, part) => axis.scale === "log" ? axis.from * (axis.to / axis.from) ** part : axis.from + part * (axis.to - axis.from);
  const partOf = (axis, value) => axis.scale === "log" ? Math.log(value / axis.from) / Math.log(axis.to / axis.from) : (value - axis.from) / (axis.to - axis.from);
  const toNumbers = (set, p) => {
    const { x, y, turn } = set;
    const alongX = ((p.x - x.a.x) * (y.b.y - y.a.y) - (p.y - x.a.y) * (y.b.x - y.a.x)) / turn;
    const alongY = ((p.y - y.a.y) * (x.b.x - x.a.x) - (p.x - y.a.x) * (x.b.y - x.a.y)) / turn;
    return [valueAt(x, alongX), valueAt(y, alongY)];
  };
  const toPlace = (set, values) => {
    const { x, y, turn } = set;
    const alongX = partOf(x, values[0]);
    const ahead = partOf(y, values[1]) - ((x.a.y - y.a.y) * (x.b.x - x.a.x) - (x.a.x - y.a.x) * (x.b.y - x.a.y)) / turn;
    return { x: x.a.x + alongX * (x.b.x - x.a.x) + ahead * (y.b.x - y.a.x), y: x.a.y + alongX * (x.b.y - x.a.y) + ahead * (y.b.y - y.a.y) };
  };

  const element = (name, attributes) => {
    const made = document.createElementNS(SVG, name);
    Object.entries(attributes).forEach(([key, value]) => made.setAttribute(key, value));
    return made;
  };
  const draw = () => {
    const layer = field("marked");
    const parts = [];
    ["x", "y"].forEach((name) => {
      const a = place(field(name + "1-at").value);
      const b = place(field(name + "2-at").value);
      if (a && b) { parts.push(element("path", { class: "axis-line", d: "M" + a.x + " " + a.y + "L" + b.x + " " + b.y })); }
    });
    MARKS.forEach((name) => {
      const at = place(field(name + "-at").value);
      if (!at) { return; }
      parts.push(element("path", { class: "axis-mark", d: "M" + (at.x - 5) + " " + at.y + "h10M" + at.x + " " + (at.y - 5) + "v10" }));
      const words = element("text", { x: at.x + 4, y: at.y - 4 });
      words.textContent = field(name + "-value").value;
      parts.push(words);
    });
    points.forEach((point, index) => {
      if (point.at) { parts.push(element("circle", { cx: point.at.x, cy: point.at.y, r: 2, class: index === chosen ? "chosen" : "" })); }
    });
    if (cross) { parts.push(element("path", { class: "cross", d: "M" + (cross.x - 9) + " " + cross.y + "h18M" + cross.x + " " + (cross.y - 9) + "v18" })); }
    layer.replaceChildren(...parts);
  };

  // What was looked at is no longer what stands here.
  const stale = () => {
    const made = field("made");
    if (!made.firstElementChild || made.dataset.stale) { return; }
    made.dataset.stale = "yes";
    made.querySelectorAll("button").forEach((button) => { button.disabled = true; });
    const words = document.createElement("p");
    words.textContent = "Something was changed since. Look at what it makes again.";
    made.prepend(words);
    field("rebuilt").replaceChildren();
  };
  const write = () => {
    field("points").value = points.map((point) => point.values.map(short).join(" ")).join("\n");
    stale();
  };
  const remember = () => { before.push(field("points").value); };
  const readText = () => {
    const set = axes();
    points = field("points").value.split("\n").map((line) => line.trim().split(/[\s;]+/).map(number)).filter((values) => values.length === 2 && values.every(Number.isFinite)).slice(0, MOST + 1).map((values) => {
      const at = set ? toPlace(set, values) : null;
      return { values, at: at && Number.isFinite(at.x + at.y) ? at : null };
    });
    chosen = -1;
  };

  const choose = (index) => {
    chosen = index;
    document.querySelectorAll("#point-table tbody tr").forEach((row, at) => row.classList.toggle("chosen", at === index));
    draw();
  };
  const moveTo = (index, at) => {
    const set = axes();
    if (!set) { return; }
    points[index] = { at, values: toNumbers(set, at) };
    const inputs = document.querySelectorAll("#point-table tbody tr")[index].querySelectorAll("input");
    points[index].values.forEach((value, side) => { inputs[side].value = short(value); });
    write();
    draw();
  };
  const typed = (index, side, text) => {
    const value = number(text);
    if (!Number.isFinite(value)) { say("“" + text + "” is no number."); return; }
    remember();
    const values = [...points[index].values];
    values[side] = value;
    const set = axes();
    const at = set ? toPlace(set, values) : null;
    points[index] = { values, at: at && Number.isFinite(at.x + at.y) ? at : null };
    write();
    draw();
  };
  const without = (index) => {
    remember();
    points.splice(index, 1);
    chosen = -1;
    write();
    show();
  };
  const show = () => {
    const holder = field("point-table");
    holder.hidden = points.length === 0;
    if (points.length === 0) { holder.replaceChildren(); draw(); return; }
    const table = document.createElement("table");
    table.innerHTML = "<caption class=\"unseen\">Points</caption><thead><tr><th scope=\"col\">Point</th><th scope=\"col\">Across</th><th scope=\"col\">Upward</th><td></td></tr></thead>";
    const body = document.createElement("tbody");
    points.forEach((point, index) => {
      const row = document.createElement("tr");
      const head = document.createElement("th");
      head.scope = "row";
      head.textContent = index + 1;
      row.append(head);
      ["across", "upward"].forEach((words, side) => {
        const cell = document.createElement("td");
        const input = document.createElement("input");
        input.type = "text";
        input.inputMode = "decimal";
        input.autocomplete = "off";
        input.value = short(point.values[side]);
        input.setAttribute("aria-label", "Point " + (index + 1) + ", " + words);
        input.addEventListener("focus", () => choose(index));
        input.addEventListener("change", () => typed(index, side, input.value));
        input.addEventListener("keydown", (event) => {
          const step = { ArrowUp: 1, ArrowDown: -1 }[event.key];
          if (!step || !points[index].at) { return; }
          event.preventDefault();
          remember();
          const by = step * (event.shiftKey ? 5 : 0.5);
          moveTo(index, side === 0 ? { x: points[index].at.x + by, y: points[index].at.y } : { x: points[index].at.x, y: points[index].at.y - by });
        });
        cell.append(input);
        row.append(cell);
      });
      const last = document.createElement("td");
      const out = document.createElement("button");
      out.type = "button";
      out.className = "quiet";
      out.textContent = "Out";
      out.setAttribute("aria-label", "Take out point " + (index + 1));
      out.addEventListener("click", () => without(index));
      last.append(out);
      row.append(last);
      body.append(row);
    });
    table.append(body);
    holder.replaceChildren(table);
    choose(chosen);
  };

  const undo = () => {
    if (before.length === 0) { say("There is nothing to undo."); return; }
    field("points").value = before.pop();
    readText();
    stale();
    show();
  };
  const setMark = (name, at) => {
    field(name + "-at").value = short(Math.round(at.x * 100) / 100) + " " + short(Math.round(at.y * 100) / 100);
    take(MARKS[MARKS.indexOf(name) + 1] || "point");
    keepPlaces();
    stale();
    field(name + "-value").focus({ preventScroll: true });
    say("Type the number that is printed at this mark.");
  };
  // The marks of the axes were changed: points stay where they lie, and their numbers change.
  const keepPlaces = () => {
    const set = axes();
    if (set) {
      points = points.map((point) => {
        if (point.at) { return { at: point.at, values: toNumbers(set, point.at) }; }
        const at = toPlace(set, point.values);
        return { values: point.values, at: Number.isFinite(at.x + at.y) ? at : null };
      });
      if (points.length > 0) { field("points").value = points.map((point) => point.values.map(short).join(" ")).join("\n"); }
    }
    show();
  };
  const setAt = (at) => {
    const what = hand();
    if (MARKS.includes(what)) { setMark(what, at); return; }
    const set = axes();
    if (!set) { say("Set both marks of each axis first, with their numbers."); take(MARKS.find((name) => !place(field(name + "-at").value)) || "x1"); return; }
    if (what === "follow") {
      form().elements.follow.value = short(at.x) + " " + short(at.y);
      form().submit();
      return;
    }
    if (points.length >= MOST) { say("At most 1,000 points are taken. Keep those where the figure changes."); return; }
    remember();
    points.push({ at, values: toNumbers(set, at) });
    chosen = points.length - 1;
    write();
    show();
    const values = points[chosen].values;
    say("Point " + points.length + ": " + short(values[0]) + " across, " + short(values[1]) + " upward.");
    const row = document.querySelector("#point-table tbody tr:last-child");
    field("point-table").scrollTop = row ? row.offsetTop : 0;
  };

  const zoom = (to) => {
    const level = Math.min(4, Math.max(1, to));
    form().elements.zoom.value = level;
    const picture = field("picture");
    const view = document.querySelector(".picture-window");
    picture.setAttribute("class", "figure-picture zoom-" + level);
    const all = MARKS.map((name) => place(field(name + "-at").value)).filter(Boolean).concat(points.map((point) => point.at).filter(Boolean));
    if (all.length > 0) {
      const scale = picture.clientWidth / picture.viewBox.baseVal.width;
      const middle = (key) => (Math.min(...all.map((p) => p[key])) + Math.max(...all.map((p) => p[key]))) / 2;
      view.scrollLeft = middle("x") * scale - view.clientWidth / 2;
      view.scrollTop = middle("y") * scale - view.clientHeight / 2;
    }
  };

  const keys = (event) => {
    const move = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] }[event.key];
    const box = field("picture").viewBox.baseVal;
    if (move) {
      event.preventDefault();
      const by = event.shiftKey ? 10 : 0.5;
      if (chosen >= 0 && points[chosen].at) {
        remember();
        moveTo(chosen, { x: points[chosen].at.x + move[0] * by, y: points[chosen].at.y + move[1] * by });
        return;
      }
      cross = cross || { x: box.width / 2, y: box.height / 2 };
      cross = { x: Math.min(box.width, Math.max(0, cross.x + move[0] * by)), y: Math.min(box.height, Math.max(0, cross.y + move[1] * by)) };
      draw();
      const set = axes();
      const values = set ? toNumbers(set, cross) : [cross.x, cross.y];
      say(short(values[0]) + " across, " + short(values[1]) + (set ? " upward." : " down."));
    } else if (event.key === "Enter" && cross) {
      event.preventDefault();
      setAt(cross);
      choose(-1);
    } else if (event.key === "Backspace") {
      event.preventDefault();
      undo();
    } else if (event.key === "Delete" && chosen >= 0) {
      event.preventDefault();
      without(chosen);
    } else if (event.key === "Escape") {
      choose(-1);
    }
  };

  document.addEventListener("DOMContentLoaded", () => {
    if (!form()) { return; }
    document.querySelectorAll("[data-needs-script]").forEach((part) => { part.hidden = false; });
    field("as-text").open = false;
    readText();
    show();
    take(MARKS.find((name) => !place(field(name + "-at").value)) || "point");
    zoom(parseInt(form().elements.zoom.value, 10) || (window.innerWidth < 600 ? 2 : 1));
    const picture = field("picture");
    picture.addEventListener("click", (event) => {
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM().inverse());
      const near = hand() === "point" ? points.findIndex((point) => point.at && Math.hypot(point.at.x - at.x, point.at.y - at.y) < NEAR) : -1;
      cross = null;
      if (near >= 0) { choose(near); say("Point " + (near + 1) + " is chosen. Arrows move it, Delete takes it out."); picture.focus({ preventScroll: true }); return; }
      setAt({ x: at.x, y: at.y });
    });
    picture.addEventListener("keydown", keys);
    field("larger").addEventListener("click", () => zoom((parseInt(form().elements.zoom.value, 10) || 1) + 1));
    field("smaller").addEventListener("click", () => zoom((parseInt(form().elements.zoom.value, 10) || 1) - 1));
    field("undo").addEventListener("click", undo);
    field("points").addEventListener("change", () => { readText(); show(); });
    form().addEventListener("change", (event) => {
      if (event.target.name === "hand") { return; }
      // Shares of a curve are mostly printed in percent, other numbers are not.
      if (event.target.name === "kind" && points.length === 0) { field("y-scale").value = event.target.value === "curve" ? "percent" : "linear"; }
      stale();
      if (/^[xy]([12]-(at|value)|-scale)$/.test(event.target.name)) { keepPlaces(); }
    });
  });
})();
