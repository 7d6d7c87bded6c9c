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
      if (!field) { return; }
      const note = document.createElement("span");
      note.className = "at-field";
      note.id = "note-" + index;
      const kind = document.createElement("b");
      kind.textContent = line.querySelector("b").textContent + ": ";
      note.append(kind, line.querySelector(".words").textContent);
      field.after(note);
      field.setAttribute("aria-describedby", ((field.getAttribute("aria-describedby") || "") + " " + note.id).trim());
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
