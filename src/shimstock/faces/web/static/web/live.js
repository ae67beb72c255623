// What others do shows up on an open page: asks the shed every few seconds whether anything was
// written down since the page was made, says it, and takes the page anew unless something is typed.
"use strict";
(() => {
  const EVERY = 3000;
  let asking = false;

  // Or sending: a form that is asked for must not be taken away.
  const typing = () => {
    const at = document.activeElement;
    if (at && at.matches("input:not([type=checkbox]):not([type=radio]), textarea, select")) return true;
    const forms = [...document.querySelectorAll("main form")];
    return forms.some((form) => form.dataset.typed === "yes" || form.getAttribute("aria-busy"));
  };

  document.addEventListener("input", (event) => {
    const form = event.target.closest("form");
    if (form) form.dataset.typed = "yes";
  });

  const ask = async () => {
    const live = document.getElementById("live");
    if (asking || !live || !live.dataset.since || document.visibilityState !== "visible") return;
    asking = true;
    try {
      const about = new URLSearchParams({ machine: live.dataset.machine, since: live.dataset.since });
      const answer = await fetch(`${live.dataset.address}?${about}`, { credentials: "same-origin" });
      if (answer.status === 200) await show(live, await answer.json());
    } catch {
      // Out of reach: kept.js says so.
    } finally {
      asking = false;
    }
  };

  const show = async (live, news) => {
    live.dataset.since = news.latest;
    const lines = news.entries.map((entry) => {
      const line = document.createElement("p");
      line.textContent = `${entry.who}, ${entry.time}: ${entry.says}`;
      return line;
    });
    live.replaceChildren(...lines);
    const text = typing() ? "" : await (await fetch(location.href, { credentials: "same-origin" })).text();
    const page = text && new DOMParser().parseFromString(text, "text/html").getElementById("page");
    if (typing() || !page) { // asked again: somebody may have begun while the page came
      live.append(anew());
    } else if (steady(document) && steady(page) !== steady(document)) {
      live.append(anew());
      beside(lines);
    } else {
      takeAnew(page);
    }
  };

  const anew = () => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "plain";
    button.textContent = "Show the page as it is now";
    button.addEventListener("click", () => location.reload());
    return button;
  };

  // What a thumb is about to press does not turn into something else: it is said below it.
  const steady = (page) => page.querySelector("[data-steady]")?.dataset.steady || "";

  const beside = (lines) => {
    document.querySelector(".moved-on")?.remove();
    const said = document.createElement("div");
    said.className = "card explains moved-on";
    said.append(...lines.map((line) => line.cloneNode(true)), anew());
    document.querySelector("[data-steady]").after(said);
  };

  // What the reader has opened stays open.
  const takeAnew = (page) => {
    const old = document.getElementById("page");
    const name = (each) => each.id || each.querySelector("summary")?.textContent.trim();
    const opened = new Set([...old.querySelectorAll("details[open]")].map(name));
    for (const each of page.querySelectorAll("details")) if (opened.has(name(each))) each.open = true;
    old.replaceWith(page);
    htmx.process(page);
    document.dispatchEvent(new Event("htmx:afterSettle"));
  };

  setInterval(ask, EVERY);
  document.addEventListener("visibilitychange", ask);
})();
