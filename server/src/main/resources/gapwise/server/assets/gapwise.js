// Browsers that cannot show the content of closed details by style alone get the filters opened
// where there is room beside the results.
(() => {
  "use strict";
  const wide = window.matchMedia("(min-width: 60rem)");
  const styleUnfolds = CSS.supports("selector(::details-content)");
  const unfold = () => {
    if (!styleUnfolds && wide.matches) {
      document.querySelectorAll("details.filters").forEach((fold) => { fold.open = true; });
    }
  };
  document.addEventListener("DOMContentLoaded", unfold);
  document.addEventListener("htmx:afterSettle", unfold);
})();
