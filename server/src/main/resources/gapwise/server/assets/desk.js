// What is typed at the desk is kept when a field is left, and what is to be said of it comes back and
// stands at its field. Without this script the button "Keep what is typed and check" does the same.
(() => {
  "use strict";
  const FIELDS = "[name^='c.']";
  const waiting = new Map();

  const told = () => document.getElementById("told");

  const placeNotes = () => {
    document.querySelectorAll(".at-field").forEach((note) => note.remove());
    document.querySelectorAll(FIELDS).forEach((field) => {
      field.removeAttribute("aria-invalid");
      field.removeAttribute("aria-describedby");
    });
    document.querySelectorAll("#told .noted li").forEach((line, index) => {
      if (line.classList.contains("needed") || line.classList.contains("settled")) { return; }
      const field = document.getElementById(line.dataset.cells.split(" ")[0]);
      if (!field || !field.matches(FIELDS)) { return; }
      const note = document.createElement("span");
      note.className = "at-field";
      note.id = "note-" + index;
      const kind = document.createElement("b");
      kind.textContent = line.querySelector("b").textContent + ": ";
      note.append(kind, line.querySelector(".words").textContent);
      field.after(note);
      field.setAttribute("aria-describedby", ((field.getAttribute("aria-describedby") || "") + " " + note.id).trim());
      // What a synthesis would take stands at its field alone, so that the list above stays short.
      line.hidden = line.classList.contains("used");
      if (line.classList.contains("impossible")) { field.setAttribute("aria-invalid", "true"); }
    });
  };

  const say = (words) => {
    const line = told().querySelector("[data-kept]");
    if (line) { line.textContent = words; }
  };

  const keep = async (field) => {
    const draft = document.getElementById("typed").dataset.draft;
    const text = field.value.trim();
    if (text === field.dataset.seen) { waiting.delete(field); return; }
    field.dataset.state = "keeping";
    waiting.set(field, true);
    const body = new URLSearchParams({ cell: field.name, text, seen: field.dataset.seen });
    try {
      const answer = await fetch("/desk/" + draft + "/cell", { method: "POST", body });
      const words = await answer.text();
      if (!answer.ok) {
        const page = new DOMParser().parseFromString(words, "text/html");
        const why = page.querySelector("main p.lead, main li, main p");
        say("Not kept. " + (why ? why.textContent.trim() : "Open the draft again."));
        return;
      }
      field.dataset.seen = text;
      waiting.delete(field);
      const fresh = new DOMParser().parseFromString(words, "text/html");
      told().replaceChildren(...fresh.body.childNodes);
      placeNotes();
    } catch (unreachable) {
      say("Not kept, since the server does not answer. It is tried again.");
      setTimeout(() => keep(field), 3000);
    } finally {
      delete field.dataset.state;
    }
  };

  document.addEventListener("DOMContentLoaded", () => {
    if (!document.getElementById("typed")) { return; }
    placeNotes();
    document.addEventListener("told", placeNotes);
    document.addEventListener("change", (event) => {
      if (event.target instanceof HTMLInputElement && event.target.matches(FIELDS)) { keep(event.target); }
    });
    document.addEventListener("settled", (event) => {
      if (event.target.matches(FIELDS)) { keep(event.target); }
    });
    window.addEventListener("beforeunload", (event) => {
      if (waiting.size > 0) { event.preventDefault(); }
    });
  });

  // Whoever works here is asked for initials once.
  document.addEventListener("DOMContentLoaded", () => {
    document.querySelectorAll("[data-remember]").forEach((field) => {
      const name = "gapwise-" + field.dataset.remember;
      if (!field.value) { field.value = localStorage.getItem(name) || ""; }
      field.form.addEventListener("submit", () => localStorage.setItem(name, field.value.trim()));
    });
    document.querySelectorAll("form[data-ask]").forEach((form) => {
      form.addEventListener("submit", (event) => {
        if (!window.confirm(form.dataset.ask)) { event.preventDefault(); }
      });
    });
  });
})();

// The paper beside the fields: a click on a word, or a box drawn over words, puts them into the field
// in hand. With the keys: Tab to the page, arrows from word to word, Shift with them for more, Enter.
(() => {
  "use strict";
  const SVG = "http://www.w3.org/2000/svg";
  const FIELDS = "[name^='c.']";
  let inHand = null;
  let start = null;
  let band = null;
  let current = -1;
  let from = -1;

  const page = () => document.querySelector("#page .paper-page");
  const words = () => [...document.querySelectorAll("#page .paper-page .words rect")];

  const point = (event) => {
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(page().getScreenCTM().inverse());
    return { x: at.x, y: at.y };
  };

  const boxOf = (rect) => {
    const left = Number(rect.getAttribute("x"));
    const top = Number(rect.getAttribute("y"));
    return { left, top, right: left + Number(rect.getAttribute("width")), bottom: top + Number(rect.getAttribute("height")) };
  };

  const within = (box) => words().filter((rect) => {
    const one = boxOf(rect);
    const x = (one.left + one.right) / 2;
    const y = (one.top + one.bottom) / 2;
    return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
  });

  const write = (box) => [box.left, box.top, box.right, box.bottom].map((one) => Math.max(0, one).toFixed(2)).join(",");

  const near = (rects) => {
    words().forEach((rect) => rect.classList.toggle("near", rects.includes(rect)));
  };

  const hand = (field) => {
    document.querySelectorAll(".in-hand-now").forEach((one) => one.classList.remove("in-hand-now"));
    inHand = field;
    field.classList.add("in-hand-now");
    const line = document.getElementById("in-hand");
    if (line) { line.textContent = "Words go into: " + field.getAttribute("aria-label"); }
  };

  const taken = (fresh) => {
    fresh.querySelectorAll("#fresh-reading [data-cell][data-text]").forEach((one) => {
      const field = document.getElementById(one.dataset.cell);
      if (field) { field.value = one.dataset.text; field.dataset.seen = one.dataset.text; }
    });
    const missing = [...fresh.querySelectorAll("#fresh-reading [data-cell][data-text]")]
      .some((one) => !document.getElementById(one.dataset.cell));
    if (missing) { location.reload(); return; }
    document.getElementById("told").replaceChildren(...fresh.getElementById("fresh-told").childNodes);
    document.getElementById("reading").replaceChildren(...fresh.getElementById("fresh-reading").childNodes);
    document.dispatchEvent(new CustomEvent("told"));
  };

  // What the server answers, as a page; null where it does not answer, or this page is left meanwhile.
  const asked = async (href, how) => {
    try {
      const answer = await fetch(href, how);
      return { ok: answer.ok, page: new DOMParser().parseFromString(await answer.text(), "text/html") };
    } catch (unreachable) {
      return null;
    }
  };

  const put = async (rects, drawn, as, cell) => {
    const reading = document.getElementById("reading");
    const name = cell || (inHand && inHand.name);
    if (!name) { reading.textContent = "Choose the field first that these words belong to."; return; }
    const body = new URLSearchParams({ cell: name, words: rects.map((rect) => rect.dataset.text).join(" "), page: page().dataset.number });
    (rects.length > 0 ? rects.map(boxOf) : [drawn]).forEach((box) => body.append("box", write(box)));
    if (as) { body.append("as", as); }
    const answer = await asked("/desk/" + document.getElementById("typed").dataset.draft + "/read", { method: "POST", body });
    if (!answer) { reading.textContent = "Nothing was put, since the server does not answer. Try it again."; return; }
    const fresh = answer.page;
    if (answer.ok) {
      taken(fresh);
      reading.querySelectorAll("[data-as]").forEach((button) => {
        button.addEventListener("click", () => put(rects, drawn, button.dataset.as, button.dataset.name));
      });
      if (inHand) { inHand.focus({ preventScroll: true }); }
    } else {
      const why = fresh.querySelector("main li, main p");
      reading.textContent = why ? why.textContent.trim() : "Nothing was put. Open the draft again.";
    }
  };

  const end = (event) => {
    if (!start) { return; }
    const stop = point(event);
    const box = { left: Math.min(start.x, stop.x), top: Math.min(start.y, stop.y), right: Math.max(start.x, stop.x), bottom: Math.max(start.y, stop.y) };
    const dragged = box.right - box.left > 3 || box.bottom - box.top > 3;
    const hit = dragged ? within(box) : (event.target.dataset && event.target.dataset.text ? [event.target] : []);
    start = null;
    if (band) { band.remove(); band = null; }
    near(hit);
    const whole = document.getElementById("whole-table");
    if (dragged && whole && whole.checked) {
      location.assign("/desk/" + document.getElementById("typed").dataset.draft + "/table?page=" + page().dataset.number + "&box=" + write(box));
      return;
    }
    if (hit.length > 0 || dragged) { put(hit, box); }
  };

  const keys = (event) => {
    const all = words();
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (step && all.length > 0) {
      event.preventDefault();
      current = Math.min(all.length - 1, Math.max(0, current + step));
      if (!event.shiftKey) { from = current; }
      near(all.slice(Math.min(from, current), Math.max(from, current) + 1));
      document.getElementById("reading").textContent = all.slice(Math.min(from, current), Math.max(from, current) + 1).map((rect) => rect.dataset.text).join(" ");
    } else if (event.key === "Enter" && current >= 0) {
      event.preventDefault();
      put(all.slice(Math.min(from, current), Math.max(from, current) + 1), null);
    }
  };

  const load = async (href) => {
    const answer = await asked(href);
    const holder = document.getElementById("page");
    if (!answer) { holder.textContent = "The page cannot be shown, since the server does not answer. Open the draft again."; return; }
    const fresh = answer.page;
    const part = fresh.querySelector(".page-of-paper");
    if (!part) {
      const why = fresh.querySelector("main li, main p");
      holder.textContent = why ? why.textContent.trim() : "The page cannot be shown.";
      return;
    }
    holder.replaceChildren(part);
    current = -1;
    from = -1;
    const svg = page();
    svg.addEventListener("pointerdown", (event) => {
      start = point(event);
      band = document.createElementNS(SVG, "rect");
      band.setAttribute("class", "drawn");
      svg.append(band);
      event.preventDefault();
    });
    svg.addEventListener("pointermove", (event) => {
      if (!start) { return; }
      const at = point(event);
      band.setAttribute("x", Math.min(start.x, at.x));
      band.setAttribute("y", Math.min(start.y, at.y));
      band.setAttribute("width", Math.abs(at.x - start.x));
      band.setAttribute("height", Math.abs(at.y - start.y));
      band.setAttribute("pointer-events", "none");
    });
    svg.addEventListener("pointerup", end);
    svg.addEventListener("keydown", keys);
    holder.querySelectorAll("a[data-page]").forEach((link) => {
      link.addEventListener("click", (event) => { event.preventDefault(); load(link.getAttribute("href") + "?draft=" + document.getElementById("typed").dataset.draft); });
    });
  };

  document.addEventListener("DOMContentLoaded", () => {
    const holder = document.getElementById("page");
    if (!holder) { return; }
    load(holder.dataset.href);
    document.addEventListener("focusin", (event) => {
      if (event.target.matches && event.target.matches(FIELDS)) { hand(event.target); }
    });
  });
})();
