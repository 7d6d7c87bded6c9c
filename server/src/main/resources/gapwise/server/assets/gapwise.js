// Where there is room beside the results the filters stand open; on a phone they fold under one
// line. The style sheet shows them on wide screens without this script too.
(() => {
  "use strict";
  const wide = window.matchMedia("(min-width: 60rem)");
  const unfold = () => {
    if (wide.matches) {
      document.querySelectorAll("details.filters").forEach((fold) => { fold.open = true; });
    }
  };
  document.addEventListener("DOMContentLoaded", unfold);
  wide.addEventListener("change", unfold);
})();

// A button that copies the words of another element stands only where the browser can copy.
(() => {
  "use strict";
  const ready = () => {
    document.querySelectorAll("button[data-copy]").forEach((button) => {
      const source = document.getElementById(button.dataset.copy);
      if (!navigator.clipboard || !source) { return; }
      button.hidden = false;
      button.addEventListener("click", async () => {
        await navigator.clipboard.writeText(source.textContent.trim());
        button.textContent = "Copied";
      });
    });
  };
  document.addEventListener("DOMContentLoaded", ready);
})();

// The menu of a phone opens and closes without this script; here Escape closes it too.
(() => {
  "use strict";
  document.addEventListener("keydown", (event) => {
    const menu = document.querySelector("details.menu[open]");
    if (event.key === "Escape" && menu) {
      menu.open = false;
      menu.querySelector("summary").focus();
    }
  });
})();

// A list of choices acts when it is left: arrow keys pass over choices that nobody meant. One taken
// with the pointer is meant and acts at once.
(() => {
  "use strict";
  let byKeys = null;
  const settle = (select) => select.dispatchEvent(new CustomEvent("settled", { bubbles: true }));
  const ofSelect = (act) => (event) => {
    if (event.target instanceof HTMLSelectElement) { act(event.target); }
  };
  document.addEventListener("keydown", ofSelect((select) => {
    if (byKeys?.select !== select) { byKeys = { select, changed: false }; }
  }));
  document.addEventListener("pointerdown", ofSelect((select) => {
    if (byKeys?.select === select && !byKeys.changed) { byKeys = null; }
  }));
  document.addEventListener("change", ofSelect((select) => {
    if (byKeys?.select === select) { byKeys.changed = true; } else { settle(select); }
  }));
  document.addEventListener("focusout", ofSelect((select) => {
    const left = byKeys;
    byKeys = null;
    if (left?.select === select && left.changed) { settle(select); }
  }));
})();

// A result that is fetched and does not come is said not to come.
(() => {
  "use strict";
  const failed = (event) => {
    const note = event.detail.elt.querySelector(":scope > [role=alert]");
    if (!note) { return; }
    event.detail.elt.querySelectorAll(":scope > progress, :scope > [role=status]")
      .forEach((waiting) => waiting.remove());
    note.hidden = false;
  };
  ["htmx:responseError", "htmx:sendError", "htmx:timeout"]
    .forEach((name) => document.addEventListener(name, failed));
})();
