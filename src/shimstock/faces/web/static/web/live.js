// What others do shows up on an open page: asks the shed every few seconds whether anything was
// written down since the page was made, says it, and takes the page anew unless something is typed.
"use strict";
(() => {
  const EVERY = 3000;
  let asking = false;

  const typing = () => {
    const at = document.activeElement;
    if (at && at.matches("input:not([type=checkbox]):not([type=radio]), textarea, select")) return true;
    return [...document.querySelectorAll("main form")].some((form) => form.dataset.typed === "yes");
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
    if (typing()) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "plain";
      button.textContent = "Show the page as it is now";
      button.addEventListener("click", () => location.reload());
      live.append(button);
    } else {
      await htmx.ajax("GET", location.href, { target: "#page", select: "#page", swap: "outerHTML" });
    }
  };

  setInterval(ask, EVERY);
  document.addEventListener("visibilitychange", ask);
})();
