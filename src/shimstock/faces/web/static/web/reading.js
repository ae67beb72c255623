// Boxes for numbers: keys that a phone's number pad lacks, from box to box with Enter, what was
// likely meant at one touch, and what is typed but not sent put back after the page was loaded anew.
"use strict";
(() => {
  const KEYS = [["/", "/"], ["␣", " ", "space"], ["−", "-"]];
  const draftKey = `typed ${location.pathname}${location.search}`;
  const boxesOf = (form) => [...form.querySelectorAll("input[name=value]")];
  let last = null;

  const changed = (box) => box.dispatchEvent(new Event("input", { bubbles: true }));

  const put = (text) => {
    const box = last && last.isConnected ? last : document.querySelector("form.reading input[name=value]");
    if (!box) return;
    box.focus();
    if (text === null) {
      box.value = "-";
      onward(box, false);
    } else {
      box.setRangeText(text, box.selectionStart, box.selectionEnd, "end");
    }
    changed(box);
  };

  const onward = (box, send) => {
    const boxes = boxesOf(box.form);
    const next = boxes[boxes.indexOf(box) + 1];
    if (next) { next.focus(); next.select(); }
    else if (send) box.form.requestSubmit(box.form.querySelector("button.wide"));
  };

  const key = (label, act, called = "") => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "plain";
    button.tabIndex = -1; // a keyboard has these keys
    button.textContent = label;
    if (called) button.setAttribute("aria-label", called);
    button.addEventListener("pointerdown", (event) => event.preventDefault()); // the box keeps its cursor
    button.addEventListener("click", act);
    return button;
  };

  const layKeys = (form) => {
    const row = form.querySelector(".keys");
    if (!row || row.childElementCount) return;
    const pad = key("abc", () => {
      const full = boxesOf(form)[0].inputMode === "text";
      for (const box of boxesOf(form)) box.inputMode = full ? "decimal" : "text";
      pad.textContent = full ? "abc" : "123";
      const box = last || boxesOf(form)[0];
      box.blur();
      box.focus();
    });
    const units = row.dataset.units.split(" ").filter((unit) => unit && unit !== "count");
    const keys = [...KEYS, ...units.map((unit) => [unit, ` ${unit}`])];
    if (boxesOf(form).length > 1) keys.push(["none", null, "not read"]);
    row.append(...keys.map(([label, text, called]) => key(label, () => put(text), called)), pad);
    row.hidden = false;
  };

  const keepDraft = (form) => {
    try {
      const held = boxesOf(form).map((box) => box.value);
      if (held.some((text) => text)) sessionStorage.setItem(draftKey, JSON.stringify(held));
      else sessionStorage.removeItem(draftKey);
    } catch { /* A browser that keeps nothing: kept.js says so. */ }
  };

  const putBack = (form) => {
    let held;
    try { held = JSON.parse(sessionStorage.getItem(draftKey) || "null"); } catch { return; }
    const boxes = boxesOf(form);
    if (!held || boxes.some((box) => box.value)) return;
    boxes.forEach((box, at) => { box.value = held[at] || ""; });
    form.dataset.typed = "yes";
    form.closest("details")?.setAttribute("open", "");
    changed(boxes[0]);
  };

  const begin = () => {
    const form = document.querySelector("form.reading");
    if (!form) return;
    layKeys(form);
    if (matchMedia("(min-width: 60rem)").matches) {
      for (const each of document.querySelectorAll("details.how:not([data-opened])")) {
        each.open = true;
        each.dataset.opened = "yes"; // whoever shuts it again has it shut
      }
    }
  };

  document.addEventListener("focusin", (event) => {
    if (event.target.matches("form.reading input[name=value]")) last = event.target;
  });
  const took = (box) => document.getElementById(`took-${box.id.slice(4)}`);

  document.addEventListener("input", (event) => {
    const box = event.target;
    if (!box.matches("form.reading input[name=value]")) return;
    keepDraft(box.form);
    took(box).textContent = ""; // what was understood of it before is no longer so
    took(box).classList.remove("not");
    box.removeAttribute("aria-invalid");
  });
  document.addEventListener("htmx:sendError", (event) => {
    if (event.target.id !== "understood") return;
    event.target.textContent = "The shed is out of reach. You can send all the same: it is kept on this phone, and understood when the shed is back.";
  });
  document.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || !event.target.matches("form.reading input[name=value]")) return;
    event.preventDefault();
    onward(event.target, true);
  });
  document.addEventListener("click", (event) => {
    const button = event.target.closest("button[name=take]");
    if (!button) return;
    event.preventDefault();
    const at = button.value.indexOf(" ");
    const box = document.getElementById(`box-${button.value.slice(0, at)}`);
    box.value = button.value.slice(at + 1);
    box.focus();
    changed(box);
  });
  document.addEventListener("shed:sent", () => sessionStorage.removeItem(draftKey));
  document.addEventListener("htmx:afterSettle", begin); // the page was taken anew
  document.addEventListener("shed:shown", begin); // and here with what was refused
  begin();
  const form = document.querySelector("form.reading");
  if (form) putBack(form);
})();
