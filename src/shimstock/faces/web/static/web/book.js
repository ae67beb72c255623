// The text of a book: a fault's line is found in it, and one is told on which line one types.
"use strict";

addEventListener("DOMContentLoaded", () => {
  const text = document.getElementById("text");
  const told = document.getElementById("at-line");

  const goTo = (line) => {
    const lines = text.value.split("\n");
    const start = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
    text.focus({ preventScroll: true });
    text.setSelectionRange(start, start + (lines[line - 1] ?? "").length);
    const tall = parseFloat(getComputedStyle(text).lineHeight);
    text.scrollTop = Math.max(0, (line - 4) * tall);
    text.scrollIntoView({ block: "center" });
  };

  for (const link of document.querySelectorAll("a[data-line]")) {
    link.addEventListener("click", (click) => {
      click.preventDefault();
      goTo(Number(link.dataset.line));
    });
  }

  const tell = () => {
    if (document.activeElement !== text) return;
    const line = text.value.slice(0, text.selectionStart).split("\n").length;
    told.textContent = `Line ${line}`;
  };
  document.addEventListener("selectionchange", tell);
  text.addEventListener("input", tell);
});
