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
