// Before a page is left, by a form or a link, the shed is asked whether it answers. Where it does
// not, the page stays with all that was typed, and says so. Forms that kept.js or photos.js send
// are theirs; without scripts everything is sent as ever.
"use strict";
(() => {
  const PATIENCE = 15000; // ms that the shed may take to answer before a form goes
  const FOR_A_LINK = 5000; // ms before a link is followed all the same: nothing typed hangs on it
  const UNDER_WAY = 3000; // ms in which a form that was sent is not sent again
  const NOT_SENT = "The shed is out of reach. Nothing was sent; what you typed stands here. Send it again when you are back.";
  const NOT_LEFT = "The shed is out of reach. This page stays as it is.";
  const CHANGED = "The page changed while the shed was asked, and nothing was sent. Look at it, and press again.";
  const AWAY = [502, 503, 504]; // something between answers in the shed's place
  const goes = new WeakSet(); // forms that may go
  const underWay = new WeakMap(); // forms that were sent just now: by which button
  let presses = 0; // only what was pressed last is followed
  const small = document.querySelector("link[rel=icon]").href; // a file of the shed, soon there

  // "yes", "no", or "slow" where nothing has come in time.
  const reached = async (patience) => {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), patience);
    try {
      const answer = await fetch(small, { method: "HEAD", cache: "no-store", signal: stop.signal });
      return AWAY.includes(answer.status) ? "no" : "yes"; // whatever else it says, it answers
    } catch { return stop.signal.aborted ? "slow" : "no"; }
    finally { clearTimeout(timer); }
  };

  const unsay = () => document.querySelectorAll(".out-of-reach").forEach((each) => each.remove());

  // `after`: what was pressed in a form; without it, at the foot of the screen.
  const say = (text, after) => {
    unsay();
    const box = document.createElement("p");
    box.className = after ? "wrong out-of-reach" : "wrong out-of-reach at-foot";
    box.setAttribute("role", "alert");
    if (after) after.after(box);
    else document.body.append(box);
    box.textContent = text;
    if (after) box.scrollIntoView({ block: "nearest" });
  };

  const endOf = (form, submitter) =>
    submitter?.closest(".buttons, .results") || submitter || form.lastElementChild;

  addEventListener("submit", async (event) => {
    const form = event.target;
    if (event.defaultPrevented || form.target || goes.has(form)) return;
    event.preventDefault();
    const by = event.submitter;
    if (form.getAttribute("aria-busy") || underWay.get(form) === (by || form)) return;
    presses += 1;
    form.setAttribute("aria-busy", "true");
    const answers = await reached(PATIENCE);
    form.removeAttribute("aria-busy");
    if (!form.isConnected) return say(CHANGED);
    if (answers !== "yes") return say(NOT_SENT, endOf(form, by));
    unsay();
    underWay.set(form, by || form);
    setTimeout(() => underWay.delete(form), UNDER_WAY); // what comes may be a file: the page stays
    goes.add(form);
    form.requestSubmit(by);
    goes.delete(form);
  });

  // A link to another page of the shed, followed in this window.
  const followed = (event) => {
    const link = event.target.closest?.("a[href]");
    const aside = event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey;
    if (!link || aside || link.target || link.hasAttribute("download")) return null;
    const here = link.href.split("#")[0] === location.href.split("#")[0] && link.href.includes("#");
    return link.origin === location.origin && !here ? link : null;
  };

  addEventListener("click", async (event) => {
    const link = event.defaultPrevented ? null : followed(event);
    if (!link) return;
    event.preventDefault();
    presses += 1;
    const pressed = presses;
    const answers = await reached(FOR_A_LINK);
    if (pressed !== presses) return; // something else was pressed or typed since
    if (answers === "no") say(NOT_LEFT);
    else location.assign(link.href);
  });
  addEventListener("input", () => { presses += 1; });
  addEventListener("pageshow", unsay);
  addEventListener("pointerdown", () => document.querySelector(".at-foot")?.remove());
})();
