// A pair of references is settled by one key and its place taken by what was settled, and the next pair
// is chosen. Keys count only while a pair is chosen. Without this script the buttons send the form.
(() => {
  "use strict";
  // Whoever has signed in is asked for no name.
  const words = () => ["who", "why"].filter((name) => document.getElementById(name));
  const form = () => document.getElementById("pairs");
  const pairs = () => Array.from(form().querySelectorAll("[data-pair]"));
  const said = () => form().querySelector("[data-said]");

  const say = (words) => {
    said().textContent = words;
    said().hidden = words === "";
  };

  const choose = (pair) => {
    if (!pair) { return; }
    pair.focus({ preventScroll: true });
    pair.scrollIntoView({ block: "nearest" });
  };

  const step = (from, by) => choose(pairs()[pairs().indexOf(from) + by]);

  const next = (from) => {
    const all = pairs();
    const open = all.slice(all.indexOf(from) + 1).find((pair) => !("settled" in pair.dataset));
    choose(open || from);
  };

  const remember = () => words().forEach((name) => {
    sessionStorage.setItem("pairs-" + name, document.getElementById(name).value);
  });

  const settle = async (button) => {
    const pair = button.closest("[data-pair]");
    if (!form().reportValidity() || "waits" in pair.dataset) { return; }
    pair.dataset.waits = "";
    remember();
    const body = new URLSearchParams({ settle: button.value });
    words().forEach((name) => body.set(name, document.getElementById(name).value));
    try {
      const answer = await fetch("/references/pairs", { method: "POST", body, headers: { "X-Wanted": "pair" } });
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      if (!answer.ok) {
        const why = page.querySelector("main li, main p.lead, main p");
        say("Not kept. " + (why ? why.textContent.trim().replace(/\s+/g, " ") : "Open the page again."));
        delete pair.dataset.waits;
        return;
      }
      say("");
      const fresh = page.querySelector("[data-pair]");
      pair.replaceWith(fresh);
      next(fresh);
    } catch (unreachable) {
      say("Not kept, since the server does not answer. Try it again.");
      delete pair.dataset.waits;
    }
  };

  const typing = (target) => target.closest("input, textarea, select, summary") !== null;

  const press = (event) => {
    const pair = event.target.closest("[data-pair]");
    if (!pair || typing(event.target) || event.ctrlKey || event.metaKey || event.altKey) { return; }
    const key = event.key.toLowerCase();
    const button = pair.querySelector("button[data-key='" + key + "']");
    if (button && !("settled" in pair.dataset)) {
      event.preventDefault();
      settle(button);
    } else if (key === "j" || key === "k") {
      event.preventDefault();
      step(pair, key === "j" ? 1 : -1);
    }
  };

  document.addEventListener("DOMContentLoaded", () => {
    if (!form()) { return; }
    words().forEach((name) => {
      const field = document.getElementById(name);
      field.value = field.value || sessionStorage.getItem("pairs-" + name) || "";
    });
    form().querySelector("[data-keys]").hidden = false;
    form().querySelector("[data-first]").addEventListener("click", () => {
      choose(pairs().find((pair) => !("settled" in pair.dataset)));
    });
    form().addEventListener("keydown", press);
    form().addEventListener("click", (event) => {
      const button = event.target.closest("button[name='settle']");
      if (button) {
        event.preventDefault();
        settle(button);
      }
    });
  });
})();
