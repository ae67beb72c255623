// A sum's address holds only what was typed: fields left empty are not sent.
"use strict";
document.addEventListener("formdata", (event) => {
  if (!event.target.matches(".sum-form")) return;
  for (const [name, value] of [...event.formData]) if (!value) event.formData.delete(name);
});
