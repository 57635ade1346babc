// Search in the public copy as one types: the data script has each word with the numbers of the pages that say it.
(() => {
  "use strict";
  const form = document.getElementById("search");
  const data = window.wordData;
  if (!form || !data || !data.pages) return;

  const MOST = 30;
  const AT_FIRST = 8; // what a screen can show; the others follow a frame later
  const part = (id) => document.getElementById(id);
  const [counted, said, results] = ["counted", "said", "results"].map(part);
  const list = results.querySelector("ol");
  const field = form.elements.namedItem("words");
  const root = form.dataset.root;
  const { say, figure } = window.sentences;
  // Among its names a word tells more than in a text; whole more than begun, begun more than misspelt.
  const kinds = [["names", 6], ["words", 1]].map(([name, worth]) => [Object.keys(data[name]), Object.values(data[name]), worth]);

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
    const found = new Uint8Array(data.pages.length);
    let any = false;
    const give = (fits) => {
      for (const [words, pagesOf, worth] of kinds) {
        for (let at = 0; at < words.length; at += 1) {
          const share = fits(words[at]) * worth;
          if (!share) continue;
          any = true;
          for (const page of pagesOf[at]) if (found[page] < share) found[page] = share;
        }
      }
    };
    give((word) => (word === term ? 4 : word.startsWith(term) && term.length > 1 ? 2 : 0));
    if (!any && term.length > 3) give((word) => (near(term, word) ? 1 : 0));
    return found;
  };

  // The numbers of the pages that say all terms, best first.
  const search = (terms) => {
    const found = terms.map(worths);
    const sums = new Uint16Array(data.pages.length);
    const rows = [];
    for (let page = 0; page < sums.length; page += 1) {
      if (!found.every((worth) => worth[page])) continue;
      for (const worth of found) sums[page] += worth[page];
      rows.push(page);
    }
    return rows.sort((a, b) => sums[b] - sums[a] || a - b);
  };

  const make = (name, kind, ...inside) => {
    const made = document.createElement(name);
    made.className = kind;
    made.append(...inside);
    return made;
  };
  const row = (page) => {
    const [address, title, kind, line] = data.pages[page];
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
  let drawing = 0;
  const show = (text) => {
    const terms = asked(text);
    const found = terms.length ? search(terms) : [];
    const shown = found.slice(0, MOST);
    cancelAnimationFrame(drawing);
    list.replaceChildren(...shown.slice(0, AT_FIRST).map(row));
    if (shown.length > AT_FIRST) drawing = requestAnimationFrame(() => list.append(...shown.slice(AT_FIRST).map(row)));
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
