// Search in the public copy as one types: the data script has each word with the numbers of the pages that say it.
(() => {
  "use strict";
  const form = document.getElementById("search");
  const data = window.wordData;
  if (!form || !data || !data.pages) return;

  const MOST = 30;
  const part = (id) => document.getElementById(id);
  const [counted, said, results] = ["counted", "said", "results"].map(part);
  const list = results.querySelector("ol");
  const field = form.elements.namedItem("words");
  const root = form.dataset.root;
  const { say, figure } = window.sentences;
  // Among its names a word tells more than in a text; whole more than begun, begun more than misspelt.
  const kinds = [["names", 6], ["words", 1]].map(([name, worth]) => [Object.entries(data[name]), worth]);

  const undivided = { ø: "o", ł: "l", đ: "d", æ: "ae", œ: "oe", ı: "i", "’": "'" };
  const folded = (text) =>
    text.toLowerCase().normalize("NFKD").replace(/[\u0300-\u036f]/g, "").normalize("NFC").replace(/[øłđæœı’]/g, (each) => undivided[each]);
  const joining = new Set(["a", "an", "and", "at", "for", "in", "of", "on", "or", "the", "to", "with"]);
  const asked = (text) => {
    const words = [...new Set(folded(text).match(/[\p{L}\p{N}]+/gu) || [])];
    const telling = words.filter((word) => !joining.has(word));
    return telling.length ? telling : words;
  };

  // Whether two words are one slip of the keys apart: a letter more, less, another, or a swapped pair.
  const near = (a, b) => {
    if (Math.abs(a.length - b.length) > 1) return false;
    let at = 0;
    while (at < a.length && a[at] === b[at]) at += 1;
    const [x, y] = [a.slice(at), b.slice(at)];
    return x.slice(1) === y.slice(1) || x.slice(1) === y || x === y.slice(1) || (x[0] === y[1] && x[1] === y[0] && x.slice(2) === y.slice(2));
  };

  // What each page is worth to a term; a word that nothing says is taken for the nearest that something does.
  const worths = (term) => {
    const found = new Map();
    const give = (fits, most) => {
      for (const [words, worth] of kinds) {
        for (const [word, pages] of words) {
          const share = fits(word);
          if (!share) continue;
          for (const page of pages) found.set(page, Math.max(found.get(page) || 0, worth * share * most));
        }
      }
    };
    give((word) => (word === term ? 4 : word.startsWith(term) && term.length > 1 ? 2 : 0), 1);
    if (!found.size && term.length > 3) give((word) => (near(term, word) ? 1 : 0), 1);
    return found;
  };

  const search = (terms) => {
    let rows = null;
    for (const term of terms) {
      const found = worths(term);
      rows = rows === null ? found : new Map([...rows].filter(([page]) => found.has(page)).map(([page, worth]) => [page, worth + found.get(page)]));
    }
    return [...(rows || [])].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([page]) => data.pages[page]);
  };

  const make = (name, kind, ...inside) => {
    const made = document.createElement(name);
    made.className = kind;
    made.append(...inside);
    return made;
  };
  const row = ([address, title, kind, line]) => {
    const link = document.createElement("a");
    link.textContent = title;
    const [path, anchor] = address.split("#");
    link.href = root + path.split("/").map(encodeURIComponent).join("/") + (anchor ? `#${encodeURIComponent(anchor)}` : "");
    const words = make("div", "", make("h3", "contents-name", link));
    if (line) words.append(make("p", "contents-summary", line));
    return make("li", "contents-row", make("p", "contents-day", kind), words);
  };

  let speaking = 0;
  const tell = (sentence) => {
    counted.textContent = sentence;
    clearTimeout(speaking);
    speaking = setTimeout(() => { said.textContent = sentence; }, 500); // not at every letter
  };
  const show = (text) => {
    const terms = asked(text);
    const found = terms.length ? search(terms) : [];
    const shown = found.slice(0, MOST);
    list.replaceChildren(...shown.map(row));
    results.hidden = !shown.length;
    if (!terms.length) return tell("");
    if (!found.length) return tell(say("nothing"));
    return tell(say(shown.length < found.length ? "some" : "found", { shown: figure(shown.length), n: figure(found.length) }));
  };

  const keep = (words) => {
    try {
      history.replaceState(null, "", words ? "#" + new URLSearchParams({ words }) : location.pathname);
    } catch {
      // A browser that refuses this for files: the search works, the address does not follow.
    }
  };
  const restore = () => {
    field.value = new URLSearchParams(location.hash.slice(1)).get("words") || field.value;
    show(field.value);
  };
  field.addEventListener("input", () => { keep(field.value.trim()); show(field.value); });
  form.addEventListener("submit", (event) => event.preventDefault());
  window.addEventListener("hashchange", restore);
  restore();
})();
