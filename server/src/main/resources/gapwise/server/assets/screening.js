// One key is one choice: each button that has a key is pressed by it. Without this script the buttons
// are pressed by hand, and all else is the same.
(() => {
  "use strict";
  const typing = (target) => target.closest("input, textarea, select, summary") !== null;

  const press = (event) => {
    if (event.key === "Escape" && event.target.matches("input, textarea, select")) {
      event.target.blur();
      return;
    }
    if (typing(event.target) || event.repeat || event.ctrlKey || event.metaKey || event.altKey) { return; }
    const wanted = document.querySelector("[data-key='" + CSS.escape(event.key.toLowerCase()) + "']");
    if (wanted) {
      event.preventDefault();
      wanted.click();
    }
  };

  document.addEventListener("DOMContentLoaded", () => {
    if (!document.querySelector("[data-key]")) { return; }
    document.addEventListener("keydown", press);
    document.querySelectorAll("[data-keys]").forEach((words) => { words.hidden = false; });
    // A choice that is sent twice by an impatient hand is one choice.
    document.querySelectorAll("form[data-once]").forEach((form) => form.addEventListener("submit", (event) => {
      if ("sent" in form.dataset) { event.preventDefault(); }
      form.dataset.sent = "";
    }));
  });
})();
