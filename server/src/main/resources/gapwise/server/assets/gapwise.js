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
