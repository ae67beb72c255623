// Forms that are kept on the phone while the shed is out of reach. A form with `data-keep` (what it
// is) and `data-says` (what it says) is written down on the phone before it is sent, and taken off
// again when the shed has it: it survives a lost network, a reload and a closed browser. The shed
// knows each form by its own key and does it once, however often it comes.
"use strict";
(() => {
  const PATIENCE = 15000; // ms that the shed may take to answer
  const AGAIN = 10000; // ms between two tries
  const HELD = 6000; // ms that one open page may hold the right to send, without a sign of life
  const ALIVE = 2000; // ms between two signs of life
  const ITEM = "kept ", DONE = "in the book ", LOCK = "kept: sending", OPEN = "kept: open";
  const NOT_TYPED = new Set(["csrfmiddlewaretoken", "form", "seen"]);
  const me = [...crypto.getRandomValues(new Uint32Array(2))].join("-");
  const here = []; // kept in this open page alone, where the browser keeps nothing
  const underWay = new Set(); // keys of the forms that this page is sending now
  let sending = false;

  // --- what is kept -----------------------------------------------------------------------

  // Tried once: every write wakes the other open pages, and they would wake this one.
  let known;
  const works = () => {
    if (known !== undefined) return known;
    try {
      localStorage.setItem("kept: try", "x");
      localStorage.removeItem("kept: try");
      known = true;
    } catch { known = false; }
    return known;
  };

  const all = (prefix) => {
    try {
      return Object.keys(localStorage)
        .filter((key) => key.startsWith(prefix))
        .map((key) => JSON.parse(localStorage.getItem(key)))
        .sort((one, other) => one.at - other.at);
    } catch { return []; }
  };

  const items = () => [...all(ITEM), ...here];

  const keep = (item) => {
    const at = here.findIndex((each) => each.form === item.form);
    if (at >= 0) here.splice(at, 1);
    try { localStorage.setItem(ITEM + item.form, JSON.stringify(item)); }
    catch { here.push(item); }
  };

  const still = (item) => items().find((each) => each.form === item.form && each.at === item.at);

  const letGo = (item) => {
    const at = here.findIndex((each) => each.form === item.form);
    if (at >= 0) here.splice(at, 1);
    try { localStorage.removeItem(ITEM + item.form); } catch { /* nothing was kept there */ }
  };

  const note = (prefix, name, value) => {
    try { localStorage.setItem(prefix + name, JSON.stringify(value)); } catch { /* only a line in the bar */ }
  };

  // --- what the bar says ------------------------------------------------------------------

  const add = (parent, kind, text, into = {}) => {
    const made = document.createElement(kind);
    made.textContent = text;
    Object.assign(made, into);
    parent.append(made);
    return made;
  };

  const button = (parent, text, act) => add(parent, "button", text, { type: "button", className: "plain", onclick: act });

  const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");
  const two = (number) => String(number).padStart(2, "0");

  // As the shed writes it: 3 Oct 2026, 20:14.
  const clock = (at) => {
    const when = new Date(at);
    const day = `${when.getDate()} ${MONTHS[when.getMonth()]} ${when.getFullYear()}`;
    return `${day}, ${two(when.getHours())}:${two(when.getMinutes())}`;
  };

  const counted = (kept) => {
    const kinds = new Map();
    for (const item of kept) kinds.set(item.kind, (kinds.get(item.kind) || 0) + 1);
    const said = [...kinds].map(([kind, count]) => `${count} ${kind}${count > 1 ? "s" : ""}`);
    return `${said.join(" and ")} ${kept.length > 1 ? "are" : "is"}`;
  };

  const line = (list, item) => {
    const row = add(list, "li", `${item.says} (${clock(item.at)})`);
    if (item.why) add(row, "p", item.why, { className: "kept-why" });
    if (!item.why) return;
    const row2 = add(row, "p", "", { className: "buttons" });
    if (item.state === "sign in") {
      add(row2, "a", "Sign in", { href: item.where, className: "button plain" });
      return;
    }
    button(row2, "Open it again", () => {
      sessionStorage.setItem(OPEN, item.form);
      location.assign(item.page);
    });
    button(row2, "Throw it away", (event) => {
      if (event.target.textContent === "Throw it away") event.target.textContent = "Yes, throw it away";
      else { letGo(item); say(); }
    });
  };

  let said = "";
  const say = () => {
    const bar = document.getElementById("kept");
    if (!bar) return;
    const kept = items(), done = all(DONE), forbidden = !works();
    const warn = forbidden && document.querySelector("form[data-keep]");
    const now = JSON.stringify([kept, done, here.length, Boolean(warn)]);
    if (now === said) return;
    said = now;
    bar.replaceChildren();
    bar.hidden = !kept.length && !done.length && !warn;
    const stuck = kept.filter((item) => item.state !== "kept"), going = kept.length - stuck.length;
    if (kept.length) {
      add(bar, "p", here.length
        ? `${counted(kept)} not yet in the book, and this browser keeps nothing: stay on this page until it is sent.`
        : `${counted(kept)} kept on this phone, not yet in the book. ${going
          ? `What waits for the shed is sent when it is in reach; the page may be closed.` : ""} ${stuck.length
          ? `${stuck.length > 1 ? `${stuck.length} wait` : "One waits"} for you: see below.` : ""}`);
      const list = add(bar, "ul", "");
      for (const item of kept) line(list, item);
    } else if (warn) {
      add(bar, "p", "This browser keeps nothing. If the shed is out of reach when you send, stay on the page until it is in reach again.");
    }
    if (done.length) {
      const list = add(bar, "ul", "");
      for (const each of done) {
        const row = add(list, "li", "In the book now: ");
        add(row, "a", each.says, { href: each.url });
      }
      button(add(bar, "p", ""), "Seen", () => {
        for (const each of done) localStorage.removeItem(DONE + each.form);
        say();
      });
    }
  };

  // --- sending ----------------------------------------------------------------------------

  const ask = async (address, options = {}) => {
    const patience = new AbortController();
    const timer = setTimeout(() => patience.abort(), PATIENCE);
    try {
      const answer = await fetch(address, {
        credentials: "same-origin", headers: { Accept: "text/html" }, signal: patience.signal, ...options,
      });
      return { answer, text: await answer.text() };
    } catch { return null; } // out of reach
    finally { clearTimeout(timer); }
  };

  const parsed = (text) => new DOMParser().parseFromString(text, "text/html");
  const ledElsewhere = (got, address) => got.answer.redirected && new URL(got.answer.url).pathname !== new URL(address, location).pathname;
  const away = (got) => !got || [502, 503, 504].includes(got.answer.status);

  // A form's mark grows old while it is kept: its page, asked for anew, holds a fresh one.
  const freshMark = async (item) => {
    const got = await ask(item.page);
    if (away(got)) return { state: "kept" };
    if (ledElsewhere(got, item.page)) return { state: "sign in", where: got.answer.url };
    const page = parsed(got.text);
    const there = page.getElementById("kept")?.dataset.who;
    if (item.who && there && item.who !== there) {
      return { state: "sign in", where: `/sign-in/?then=${encodeURIComponent(item.page)}`, why: `${item.who} typed it, and ${there} is signed in: ${item.who} sends it.` };
    }
    const mark = page.querySelector("input[name=csrfmiddlewaretoken]");
    return mark ? { mark: mark.value } : { state: "refused", why: `The page it was typed on cannot be had: ${got.answer.status}.` };
  };

  const post = (item, mark) => {
    const body = new URLSearchParams(item.fields);
    body.append("csrfmiddlewaretoken", mark);
    body.append("kept_at", new Date(item.at).toISOString());
    return ask(item.action, { method: "POST", body });
  };

  // What became of a form: sent, kept (out of reach), refused or "sign in".
  const send = async (item, mark = "") => {
    let fresh = mark ? { mark } : await freshMark(item);
    if (!mark && held() && held().by !== me) return { state: "kept" }; // another page sends it
    let got = fresh.mark ? await post(item, fresh.mark) : null;
    if (mark && got && got.answer.status === 403) {
      fresh = await freshMark(item);
      got = fresh.mark ? await post(item, fresh.mark) : null;
    }
    if (!fresh.mark) return fresh;
    if (away(got)) return { state: "kept" };
    if (got.answer.redirected && new URL(got.answer.url).searchParams.has("then")) return { state: "sign in", where: got.answer.url };
    const page = parsed(got.text);
    if (got.answer.ok && got.answer.redirected) {
      // Only what the shed says it wrote down is let go of; asked again, it says so again.
      return page.querySelector(".said .success") ? { state: "sent", url: got.answer.url, page } : { state: "kept" };
    }
    const reasons = [...page.querySelectorAll(".wrong li")].map((each) => each.textContent.trim());
    const why = reasons.join(" ") || `The shed answered ${got.answer.status}.`;
    return { state: "refused", why, page, shows: got.answer.status === 422 && page.getElementById("page") };
  };

  const WORDS = { "sign in": "Somebody must sign in on this phone first." };

  const settle = (item, came) => {
    if (came.state === "sent") return letGo(item);
    keep({ ...item, state: came.state, where: came.where || "", why: came.why || WORDS[came.state] || "" });
  };

  // What a page said of it, and the address at which it is undone.
  const answerOf = (page) => [...page.querySelectorAll(".said p")].map((each) => {
    const undo = each.querySelector(".undo");
    undo?.remove();
    return { text: each.textContent.trim(), undo: undo?.getAttribute("href") || "" };
  });

  // --- one page sends at a time -----------------------------------------------------------

  const held = () => {
    try { return JSON.parse(localStorage.getItem(LOCK) || "null"); } catch { return null; }
  };
  let alive = 0;
  const signOfLife = () => note("", LOCK, { by: me, until: Date.now() + HELD });
  const hold = () => {
    signOfLife();
    clearInterval(alive);
    alive = setInterval(() => { if (held()?.by === me) signOfLife(); }, ALIVE);
  };
  const free = () => {
    clearInterval(alive);
    if (held()?.by === me) localStorage.removeItem(LOCK);
  };
  addEventListener("pagehide", free); // else the next page would wait until the right runs out

  const mayI = async () => {
    const other = held();
    if (other && other.by !== me && other.until > Date.now()) return false;
    if (!works()) return true;
    hold();
    if (!held()) return true; // so little room is left that the right to send cannot be written
    await new Promise((done) => setTimeout(done, 150)); // two at once: the later of them holds it
    return held()?.by === me;
  };

  // Whether the form stands on this page as it was sent: then its answer may take the page's place.
  const standsHere = (item) => [...document.querySelectorAll("form[data-keep]")].some((form) => {
    const now = itemOf(form);
    const typed = (fields) => JSON.stringify(fields.filter(([name]) => !["meant", "take"].includes(name)));
    return now && now.form === item.form && typed(now.fields) === typed(item.fields);
  });

  const sendAll = async () => {
    say();
    const waiting = items().filter((item) => item.state !== "refused");
    // Whatever the browser believes of the network: a laptop without one still reaches its own shed.
    if (sending || !waiting.length) return;
    sending = true;
    try {
      if (!await mayI()) return;
      for (const item of waiting) {
        if (underWay.has(item.form) || !still(item)) continue; // being sent, sent, or typed anew
        hold();
        const came = await send(item);
        if (came.state === "sent" && standsHere(item)) {
          letGo(item);
          free();
          return sentSaying(came);
        }
        if (came.state === "sent") {
          note(DONE, item.form, { form: item.form, says: answerOf(came.page).map((each) => each.text).join(" ") || item.says, url: came.url, at: Date.now() });
        }
        if (still(item)) settle(item, came);
        if (came.state === "kept") break;
      }
    } finally {
      free();
      sending = false;
      say();
    }
  };

  // --- a form as it is sent ---------------------------------------------------------------

  const itemOf = (form, submitter) => {
    const data = new FormData(form, submitter);
    const fields = [...data].filter(([name]) => name !== "csrfmiddlewaretoken");
    if (fields.some(([, value]) => typeof value !== "string")) return null; // with a file: not kept
    return {
      form: data.get("form"), kind: form.dataset.keep, says: form.dataset.says, at: Date.now(),
      page: location.pathname + location.search, action: form.getAttribute("action") || location.href,
      fields, state: "kept", why: "", who: document.getElementById("kept")?.dataset.who || "",
    };
  };

  const sentSaying = (came) => {
    document.dispatchEvent(new Event("shed:sent"));
    try { sessionStorage.setItem("said", JSON.stringify(answerOf(came.page))); } catch { /* shown without */ }
    if (came.url.split("#")[0] === location.href.split("#")[0]) location.reload();
    else location.assign(came.url);
  };

  const showRefused = (came) => {
    const fresh = came.page.getElementById("page");
    const old = document.getElementById("page");
    if (!fresh || !old) return;
    old.replaceWith(fresh);
    htmx.process(fresh);
    document.dispatchEvent(new Event("shed:shown"));
    const wrong = fresh.querySelector(".wrong");
    if (wrong) { wrong.tabIndex = -1; wrong.focus(); wrong.scrollIntoView({ block: "start" }); }
  };

  const submitted = async (form, item, mark) => {
    const buttons = [...form.querySelectorAll("button")];
    for (const each of buttons) each.disabled = true;
    form.setAttribute("aria-busy", "true");
    underWay.add(item.form);
    keep(item);
    hold();
    let came;
    try { came = await send(item, mark); }
    finally { free(); underWay.delete(item.form); }
    form.removeAttribute("aria-busy");
    for (const each of buttons) each.disabled = false;
    if (came.shows) letGo(item); // it stands in the form, with what is wrong
    else settle(item, came);
    if (came.state !== "kept" && form.dataset.openedAgain) letGo({ form: form.dataset.openedAgain });
    say();
    if (came.state === "sent") return sentSaying(came);
    if (came.shows) return showRefused(came);
    document.dispatchEvent(new Event("shed:sent")); // it is kept: no second copy of it
    document.getElementById("kept").scrollIntoView({ block: "nearest" });
  };

  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!form.matches("form[data-keep]") || form.method !== "post") return;
    if (form.getAttribute("aria-busy")) { event.preventDefault(); return; }
    const item = itemOf(form, event.submitter);
    if (!item) return;
    event.preventDefault();
    submitted(form, item, form.querySelector("input[name=csrfmiddlewaretoken]").value);
  });

  // --- a page as it opens -----------------------------------------------------------------

  const sayWhatWasSaid = () => {
    let lines = [];
    try {
      lines = JSON.parse(sessionStorage.getItem("said") || "[]");
      sessionStorage.removeItem("said");
    } catch { return; }
    if (!lines.length) return;
    const box = document.createElement("div");
    box.className = "said";
    box.setAttribute("role", "status");
    for (const each of lines) {
      const line = add(box, "p", each.text, { className: "success" });
      if (!each.undo) continue;
      line.append(" ");
      add(line, "a", "Undo", { href: each.undo, className: "undo" });
    }
    document.getElementById("page").prepend(box);
  };

  const openAgain = () => {
    let wanted;
    try {
      wanted = sessionStorage.getItem(OPEN);
      sessionStorage.removeItem(OPEN);
    } catch { return; }
    const item = wanted && items().find((each) => each.form === wanted);
    const action = item && new URL(item.action, location).href;
    const form = item && [...document.querySelectorAll("form[data-keep]")].find((each) => each.action === action && each.dataset.says === item.says);
    if (!form) return;
    const left = item.fields.filter(([name]) => !NOT_TYPED.has(name));
    for (const field of form.elements) {
      const at = left.findIndex(([name]) => name && name === field.name);
      if (field.type === "hidden" || field.tagName === "BUTTON" || at < 0) continue;
      const [[, value]] = left.splice(at, 1);
      if (["checkbox", "radio"].includes(field.type)) field.checked = true;
      else field.value = value;
    }
    form.dataset.openedAgain = item.form;
    form.dataset.typed = "yes";
    form.closest("details")?.setAttribute("open", "");
    form.scrollIntoView({ block: "start" });
    form.querySelector("input:not([type=hidden]), textarea")?.dispatchEvent(new Event("input", { bubbles: true }));
  };

  sayWhatWasSaid();
  openAgain();
  sendAll();
  setInterval(sendAll, AGAIN);
  addEventListener("online", sendAll);
  addEventListener("storage", (event) => { if (!event.key || event.key.startsWith(ITEM) || event.key.startsWith(DONE)) say(); });
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") sendAll(); });
})();
