// On a wide screen the whole drawing lies open; on a phone only what stands open and bare.
"use strict";
(() => {
  const wide = matchMedia("(min-width: 48rem)");
  const unfold = () => {
    if (wide.matches) for (const group of document.querySelectorAll("details.group")) group.open = true;
  };
  unfold();
  document.addEventListener("htmx:afterSwap", unfold);
})();
