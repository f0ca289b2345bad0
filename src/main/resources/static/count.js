/* Sends what is tapped, typed or scanned one after the other, so that nothing is lost when fingers or
   a scanner are faster than the network. Without this script the forms work by themselves. */
(() => {
  const waiting = [];
  let busy = false;

  const say = (text) => {
    const place = document.getElementById("unsaved");
    if (place) {
      place.textContent = text;
    }
  };

  const sendNext = () => {
    if (busy || waiting.length === 0) {
      return;
    }
    busy = true;
    const { path, values } = waiting.shift();
    const done = () => {
      busy = false;
      sendNext();
    };
    htmx.ajax("POST", path, { target: "#count", swap: "outerHTML", values }).then(done, done);
  };

  const lost = (event) => {
    const values = event.detail.requestConfig ? event.detail.requestConfig.parameters : {};
    const { unsaved, lastStep } = document.querySelector("[data-unsaved]")?.dataset ?? {};
    say((unsaved ?? "").replace("{0}", values.code || values.part || lastStep));
  };
  document.addEventListener("htmx:sendError", lost);
  document.addEventListener("htmx:responseError", (event) => {
    if (event.detail.xhr.status >= 500 || event.detail.xhr.status === 404) {
      lost(event);
    }
  });
  document.addEventListener("htmx:beforeRequest", () => say(""));

  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!form.matches("[data-queued]")) {
      return;
    }
    event.preventDefault();
    const values = Object.fromEntries(new FormData(form, event.submitter));
    if (form.matches("[data-scan]")) {
      form.elements.code.value = "";
      form.elements.code.focus();
      if (!values.code.trim()) {
        return;
      }
    }
    waiting.push({ path: form.getAttribute("action"), values });
    sendNext();
  });

  // A number that was typed counts when the field is left, or by Enter, but only once.
  document.addEventListener("change", (event) => {
    const form = event.target.form;
    if (event.target.name === "typed" && form) {
      form.requestSubmit(form.querySelector("[value=typed]"));
    }
  });

  document.addEventListener("keydown", (event) => {
    if (event.target.name === "typed" && event.key === "Enter") {
      event.preventDefault();
      event.target.blur();
      return;
    }
    // A scanner types wherever the focus is: its first sign takes it to the scan field.
    const code = document.getElementById("code");
    const typing = event.target.closest("input, select, textarea");
    const isSign = event.key.length === 1 && event.key !== " ";
    if (code && !typing && isSign && !event.ctrlKey && !event.altKey && !event.metaKey) {
      code.focus();
    }
  });
})();
