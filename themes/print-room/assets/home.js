// The search box of the front page: leads to the catalogue with the words in its address.
(() => {
  "use strict";
  const form = document.getElementById("search");
  if (!form) return;
  const field = form.elements.namedItem("words");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const words = field.value.trim();
    const state = words ? "#" + new URLSearchParams({ words }) : "";
    window.location.assign(form.dataset.catalogue + state);
  });
  // Ready to type in: a key pressed anywhere that means nothing else goes into the box.
  document.addEventListener("keydown", (event) => {
    const plain = event.key.length === 1 && event.key !== " " && !event.ctrlKey && !event.metaKey && !event.altKey;
    if (plain && !event.isComposing && event.target === document.body) field.focus();
  });
})();
