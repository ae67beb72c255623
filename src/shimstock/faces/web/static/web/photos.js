// Photos on their way to the shed, a piece at a time: a broken line costs one piece. Where each of
// them is to go on is kept on this phone, so that the same picture, chosen again, goes on from there.
"use strict";
(() => {
  if (window.photosOnTheirWay) return; // the page came anew and this file with it
  window.photosOnTheirWay = true;

  const PIECE = 500_000; // bytes
  const PATIENCE = 60_000; // ms that one piece may take
  const WAITS = [1, 2, 4, 8]; // seconds until the next try
  const ON_ITS_WAY = "photo on its way: ";

  class Refused extends Error {} // it will not be taken, however often it is sent
  class NotNow extends Error {} // the shed is there, and could not take it

  const wait = (seconds) =>
    new Promise((go) => {
      const timer = setTimeout(go, seconds * 1000);
      addEventListener("online", () => (clearTimeout(timer), go()), { once: true });
    });

  // --- what this phone remembers ---------------------------------------------------------

  const here = new Map(); // in this open page alone, where the browser keeps nothing or is full
  const memory = {
    names() {
      try { return [...Object.keys(localStorage), ...here.keys()]; } catch { return [...here.keys()]; }
    },
    get(name) {
      try { return here.get(name) ?? localStorage.getItem(name); } catch { return here.get(name); }
    },
    set(name, value) {
      try { localStorage.setItem(name, value); } catch { here.set(name, value); }
    },
    remove(name) {
      here.delete(name);
      try { localStorage.removeItem(name); } catch { /* nothing was kept there */ }
    },
  };

  const typed = (form) => ({
    about: form.elements.about.value,
    moment: new FormData(form).get("moment") || "",
    note: form.elements.note.value.trim(),
    keep_place: form.elements.keep_place.checked ? "yes" : "",
  });

  const nameOf = (form, file, told) =>
    ON_ITS_WAY + JSON.stringify([form.dataset.arriving, told, file.name, file.size, file.lastModified]);

  const leftOf = (form) =>
    memory.names()
      .filter((name) => name.startsWith(ON_ITS_WAY))
      .map((name) => ({ name, kept: JSON.parse(name.slice(ON_ITS_WAY.length)) }))
      .filter(({ kept }) => kept[0] === form.dataset.arriving && kept[1].about === form.elements.about.value);

  // --- the protocol ------------------------------------------------------------------------

  const ask = async (form, address, method, headers = {}, body = undefined) => {
    const answer = await fetch(address, {
      method,
      body,
      redirect: "manual",
      signal: AbortSignal.timeout(PATIENCE),
      headers: {
        "Tus-Resumable": "1.0.0",
        "X-CSRFToken": form.elements.csrfmiddlewaretoken.value,
        ...headers,
      },
    });
    if (answer.type === "opaqueredirect") throw new Refused("Sign in again, then send them again.");
    if (answer.status >= 500) throw new NotNow();
    return answer;
  };

  const words = async (answer) => {
    const text = (answer.headers.get("Content-Type") || "").startsWith("text/plain") && (await answer.text());
    return text || "The shed did not take it. Load the page again, and choose it again.";
  };

  const base64 = (text) => btoa(String.fromCharCode(...new TextEncoder().encode(text)));

  const begin = async (form, file, told) => {
    const about = Object.entries({ ...told, filename: file.name }).map(([name, value]) => `${name} ${base64(value)}`);
    const answer = await ask(form, form.dataset.arriving, "POST", {
      "Upload-Length": String(file.size),
      "Upload-Metadata": about.join(","),
    });
    if (answer.status !== 201) throw new Refused(await words(answer));
    return new URL(answer.headers.get("Location"), location.href).pathname;
  };

  // Where a picture goes on: [its address, bytes that are there]; begun anew where nothing is left.
  const goesOn = async (form, file, told, name) => {
    const known = memory.get(name);
    if (known) {
      const answer = await ask(form, known, "HEAD");
      if (answer.ok) return [known, Number(answer.headers.get("Upload-Offset"))];
    }
    const address = await begin(form, file, told);
    memory.set(name, address);
    return [address, 0];
  };

  const sendAll = async (form, file, told, shown) => {
    const name = nameOf(form, file, told);
    let [address, offset] = await goesOn(form, file, told, name);
    for (;;) {
      shown.at(offset);
      const piece = file.slice(offset, offset + PIECE);
      const answer = await ask(form, address, "PATCH", {
        "Content-Type": "application/offset+octet-stream",
        "Upload-Offset": String(offset),
      }, await piece.arrayBuffer());
      if (answer.status === 409 && answer.headers.has("Upload-Offset")) {
        offset = Number(answer.headers.get("Upload-Offset"));
        continue;
      }
      if (answer.status !== 204) {
        memory.remove(name);
        throw new Refused(await words(answer));
      }
      offset = Number(answer.headers.get("Upload-Offset"));
      if (answer.headers.has("Photo-Page")) {
        memory.remove(name);
        shown.at(file.size);
        return shown.kept(answer.headers.get("Photo-Page"), decodeURIComponent(answer.headers.get("Photo-Says")));
      }
    }
  };

  // Send one picture, however often the line breaks. Gives whether it is kept.
  const send = async (form, file, told, shown) => {
    for (let tries = 0; ; tries += 1) {
      try {
        shown.says("on its way");
        await sendAll(form, file, told, shown);
        return true;
      } catch (error) {
        if (error instanceof Refused) {
          shown.refused(error.message);
          return false;
        }
        const why = error instanceof NotNow ? "the shed could not take it just now" : "the shed is out of reach";
        shown.says(`${why}: it goes on by itself`);
        await wait(WAITS[Math.min(tries, WAITS.length - 1)]);
      }
    }
  };

  // --- what is seen ------------------------------------------------------------------------

  const element = (kind, className = "", text = "") => {
    const made = document.createElement(kind);
    if (className) made.className = className;
    made.textContent = text;
    return made;
  };

  const size = (bytes) => (bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`);

  const line = (list, file) => {
    const item = element("li");
    const bar = element("progress");
    bar.max = file.size || 1;
    bar.value = 0;
    bar.setAttribute("aria-label", file.name);
    const bytes = element("span", "photos-bytes", size(file.size));
    const said = element("span", "photos-said", "waits");
    said.setAttribute("aria-live", "polite");
    item.append(element("span", "photos-name", file.name), bar, bytes, said);
    list.append(item);
    const says = (text) => {
      if (said.textContent !== text) said.textContent = text;
    };
    return {
      says,
      at: (offset) => {
        bar.value = offset;
        bytes.textContent = `${size(offset)} of ${size(file.size)}`;
      },
      kept: (address, text) => {
        const link = element("a", "", text);
        link.href = address;
        item.classList.add("photos-kept");
        said.replaceChildren("kept: ", link);
      },
      refused: (text) => {
        item.classList.add("photos-refused");
        says(`not kept: ${text}`);
      },
    };
  };

  const chosen = (form) => [...form.querySelectorAll("input[type=file]")].flatMap((input) => [...input.files]);

  const count = (form) => {
    const many = chosen(form).length;
    form.querySelector("[data-chosen]").textContent = chosen(form).map((file) => file.name).join(", ");
    form.querySelector("[data-send]").textContent = many ? `Keep ${many} photo${many === 1 ? "" : "s"}` : "Keep the photos";
  };

  const tellLeft = (form) => {
    const left = leftOf(form);
    const said = form.querySelector("[data-left]");
    said.hidden = left.length === 0;
    if (!left.length) return;
    const names = left.map(({ kept }) => kept[2]).join(", ");
    const forget = element("button", "plain", "Leave them");
    forget.type = "button";
    forget.addEventListener("click", () => {
      left.forEach(({ name }) => memory.remove(name));
      tellLeft(form);
    });
    said.replaceChildren(
      element("p", "", `Not all of it arrived: ${names}. Choose the same pictures again; what arrived already is not sent twice.`),
      forget,
    );
    const { moment, note, keep_place } = left[0].kept[1];
    form.elements.note.value ||= note;
    form.elements.keep_place.checked ||= keep_place === "yes";
    for (const each of form.querySelectorAll("[name=moment]")) each.checked = each.value === moment;
  };

  const sendChosen = async (form) => {
    const files = chosen(form);
    const told = typed(form);
    const list = form.querySelector("[data-list]");
    const button = form.querySelector("[data-send]");
    button.disabled = true;
    form.dataset.typed = "yes"; // the page is not taken anew under way
    list.replaceChildren();
    const lines = files.map((file) => line(list, file));
    let all = true;
    for (const [number, file] of files.entries()) all = (await send(form, file, told, lines[number])) && all;
    button.disabled = false;
    form.querySelectorAll("input[type=file]").forEach((input) => (input.value = ""));
    count(form);
    tellLeft(form);
    if (!all) return;
    form.elements.note.value = "";
    delete form.dataset.typed;
    const shown = document.getElementById("photos-shown");
    if (shown) htmx.ajax("GET", location.href, { target: "#photos-shown", select: "#photos-shown", swap: "outerHTML" });
  };

  const look = () => document.querySelectorAll("form[data-photos]").forEach((form) => {
    if (!form.querySelector("[data-send]").disabled) tellLeft(form);
  });

  document.addEventListener("change", (event) => {
    const form = event.target.closest("form[data-photos]");
    if (form) count(form);
  });
  document.addEventListener("submit", (event) => {
    const form = event.target.closest("form[data-photos]");
    if (!form || !chosen(form).length) return;
    event.preventDefault();
    form.dataset.typed = "yes"; // live.js leaves a page alone on which something is under way
    sendChosen(form);
  });
  document.addEventListener("htmx:afterSettle", look);
  addEventListener("beforeunload", (event) => {
    if (document.querySelector("form[data-photos] [data-send]:disabled")) event.preventDefault();
  });
  look();
})();
