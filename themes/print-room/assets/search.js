// Search as one types. The data script holds every text once; rows name texts by number, so a text is looked at once.
(() => {
  "use strict";
  const form = document.getElementById("search");
  const data = window.searchData;
  if (!form || !data) return;

  const MOST = { settings: 30, blanks: 10, projects: 20 }; // sixty rows at the most
  const EXACT = 8, BEGINS = 6, WITHIN = 4, MISSPELT = 1;
  const DEFECT = 0, PROJECT = 1, MANNER = 2, THING = 3; // what a word is said of, as in the terminal
  const field = form.elements.namedItem("words");
  const part = (id) => document.getElementById(id);
  const [counted, said] = ["counted", "said"].map(part);
  const root = form.dataset.root;
  const { say, count, pieces, apart, figure, language } = window.sentences;
  const either = new Intl.ListFormat(language, { type: "disjunction" });

  const undivided = { ø: "o", ł: "l", đ: "d", æ: "ae", œ: "oe", ı: "i" };
  const folded = (text) =>
    text.toLowerCase().normalize("NFKD").replace(/[\u0300-\u036f]/g, "").normalize("NFC").replace(/[øłđæœı]/g, (each) => undivided[each]);

  // The words of a text: whole between spaces, in their parts, and figures with their units (400f, 300s).
  const wordsOf = (text) => {
    const plain = folded(text);
    const words = new Set(plain.split(/[\s|]+/).map((word) => word.replace(/^[.,;:()[\]'"“”]+|[.,;:()[\]'"“”]+$/g, "")));
    for (const [word] of plain.matchAll(/[\p{L}\p{N}]+/gu)) words.add(word);
    for (const [, number, unit] of plain.matchAll(/(\d+(?:\.\d+)?)\s*°?\s*([cfs])(?![\p{L}\p{N}])/gu)) words.add(number + unit);
    words.delete("");
    return words;
  };

  let numbersOf = null; // of the texts that say a word, by word
  const index = () => {
    if (numbersOf) return;
    numbersOf = new Map();
    data.texts.forEach((text, number) => {
      for (const word of wordsOf(number in data.also ? `${text} ${data.also[number]}` : text)) {
        const known = numbersOf.get(word);
        if (known) known.push(number);
        else numbersOf.set(word, [number]);
      }
    });
  };

  const joining = new Set(["a", "an", "and", "at", "for", "in", "of", "on", "or", "the", "to", "with"]);
  const asked = (text) => {
    const pattern =
      /(?:(\d+(?:[.,]\d+)?)\s*°?\s*([cf])|(\d{1,3}):(\d\d)|(\d+(?:[.,]\d+)?)\s*(?:min(?:ute)?s?|m)(?:\s*(\d+)\s*s(?:ec(?:ond)?s?)?)?|(\d+(?:[.,]\d+)?)\s*s(?:ec(?:ond)?s?)?)(?=[\s,;]|$)|(\S+)/g;
    const number = (written) => Number((written || "0").replace(",", "."));
    const terms = [];
    for (const found of folded(text).matchAll(pattern)) {
      const [, degrees, unit, minutes, rest, whole, more, seconds, word] = found;
      if (degrees) terms.push(number(degrees) + unit);
      else if (minutes) terms.push(`${number(minutes) * 60 + number(rest)}s`);
      else if (whole) terms.push(`${number(whole) * 60 + number(more)}s`);
      else if (seconds) terms.push(`${number(seconds)}s`);
      else terms.push(word.replace(/^[.,;:()[\]'"“”°–—/-]+|[.,;:()[\]'"“”°–—/-]+$/g, ""));
    }
    const distinct = [...new Set(terms)].filter(Boolean);
    const telling = distinct.filter((term) => !joining.has(term));
    return telling.length ? telling : distinct;
  };

  // How many slips of the keys part two words (a swapped pair is one); more than `most` is not counted further.
  const slips = (a, b, most) => {
    let [before, last] = [[], Array.from({ length: b.length + 1 }, (_, at) => at)];
    for (let i = 1; i <= a.length; i += 1) {
      const now = [i];
      for (let j = 1; j <= b.length; j += 1) {
        now[j] = Math.min(last[j] + 1, now[j - 1] + 1, last[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) now[j] = Math.min(now[j], before[j - 2] + 1);
      }
      if (Math.min(...now) > most) return most + 1;
      [before, last] = [last, now];
    }
    return last[b.length];
  };
  const misspelt = (term) => {
    if (term.length < 3 || term.length > 40 || !/^\p{L}+$/u.test(term)) return [];
    let most = term.length < 6 ? 1 : 2;
    let near = [];
    for (const word of numbersOf.keys()) {
      if (Math.abs(word.length - term.length) > most || !/^\p{L}+$/u.test(word)) continue;
      const apart = slips(term, word, most);
      if (apart < most) [most, near] = [apart, []];
      if (apart <= most) near.push(word);
    }
    return near;
  };

  const NEAR = { c: 1.1, f: 2, s: 0.5 }; // 400 °F is 204.4 °C, which some set as 204 and some as 205
  const worth = (term, word) => {
    if (word === term) return EXACT;
    const measure = /^(\d+(?:\.\d+)?)([cfs])$/.exec(term);
    if (measure) {
      const [, number, unit] = measure;
      const other = word.endsWith(unit) ? Number(word.slice(0, -1)) : NaN;
      return Math.abs(other - Number(number)) <= NEAR[unit] ? WITHIN : 0;
    }
    if (!word.includes(term)) return 0;
    if (/^\d+$/.test(term)) return word.startsWith(term) && !/\d/.test(word[term.length]) ? BEGINS : 0;
    if (word.startsWith(term)) return term.length >= 2 ? BEGINS : 0;
    return term.length >= 3 || /[^\x00-\x7f]/.test(term) ? WITHIN : 0;
  };

  // What each text is worth to a term; a word with dashes that nothing has is taken to its parts.
  const worths = (term, terms, readAs) => {
    const found = new Uint8Array(data.texts.length);
    let any = false;
    const give = (word, value) => {
      any = true;
      for (const number of numbersOf.get(word)) found[number] = Math.max(found[number], value);
    };
    for (const word of numbersOf.keys()) {
      const value = worth(term, word);
      if (value) give(word, value);
    }
    const parts = any ? [] : term.match(/[\p{L}\p{N}]+/gu) || [];
    if (parts.length > 1) {
      for (const each of parts) worths(each, terms, readAs);
      return;
    }
    if (!any) {
      const near = misspelt(term);
      for (const word of near) give(word, MISSPELT);
      if (near.length) readAs.push([term, near]);
    }
    terms.push(found);
  };

  const best = (found, numbers, weight) => {
    let most = 0;
    for (const number of numbers) if (number !== null && found[number] > most) most = found[number];
    return most && most * 4 + weight;
  };

  // Every row that says all terms, best first; equals stay in the order of the data, which is best supported first.
  const ranked = (count, terms, value) => {
    const rows = [];
    for (let row = 0; row < count; row += 1) {
      let sum = 0;
      for (let term = 0; term < terms.length; term += 1) {
        const most = value(row, term);
        if (!most) { sum = 0; break; }
        sum += most;
      }
      if (sum) rows.push([sum, row]);
    }
    return rows.sort((a, b) => b[0] - a[0] || a[1] - b[1]).map(([, row]) => row);
  };

  const search = (text) => {
    index();
    const readAs = [];
    const terms = [];
    for (const term of asked(text)) worths(term, terms, readAs);
    if (!terms.length) return null;
    const each = (rows, texts, weight) => terms.map((found) => Uint8Array.from(rows, (row) => best(found, row[texts], weight)));
    const blanks = each(data.blanks, 1, THING);
    const presses = each(data.presses, 1, MANNER);
    const titles = each(data.projects, 2, PROJECT);
    const setting = (row, term) => {
      const [blank, press, dial, platen, time, pressure, face, , , projects, defects] = data.settings[row];
      let most = Math.max(blanks[term][blank], press === null ? 0 : presses[term][press]);
      most = Math.max(most, best(terms[term], [dial, platen, time, pressure, face], MANNER), best(terms[term], defects, DEFECT));
      for (const project of projects) most = Math.max(most, titles[term][project]);
      return most;
    };
    return {
      readAs,
      settings: ranked(data.settings.length, terms, setting),
      blanks: ranked(data.blanks.length, terms, (row, term) => blanks[term][row]),
      projects: ranked(data.projects.length, terms, (row, term) => Math.max(titles[term][row], blanks[term][data.projects[row][1]])),
    };
  };

  const make = (name, kind, ...inside) => {
    const made = document.createElement(name);
    if (kind) made.className = kind;
    made.append(...inside);
    return made;
  };
  const text = (number) => (number === null ? "" : data.texts[number]);
  const way = (address, ...words) => {
    const link = make("a", "", ...words);
    link.href = root + encodeURI(address);
    return link;
  };
  // A figure large, the same in the other unit beside it: as on the pages of settings.
  const figures = (number, kind) => {
    const [first, second] = text(number).split("|");
    const small = (words) => make("span", "tried-small", words);
    return make("span", "tried-figure", ...(first ? [make("span", `tried-large${kind}`, apart(first)), " ", small(apart(second))] : [small(say("not given"))]));
  };
  const aside = (...inside) => make("p", "tried-aside", ...inside);

  const draw = {
    settings: (row) => {
      const [blank, press, dial, platen, time, pressure, face, outcome, last, projects] = data.settings[row];
      const [page, [name]] = data.blanks[blank];
      const head = make("div", "tried-name", make("h3", "", way(page, text(name))));
      if (press !== null) head.append(aside(text(data.presses[press][1][0])));
      if (projects.length) {
        const some = make("span", "");
        projects.slice(0, 3).forEach((each, at) => {
          if (at) some.append(say("comma"));
          some.append(way(data.projects[each][0], text(data.projects[each][2][0])));
        });
        head.append(aside(...(projects.length > 3 ? pieces("more", projects.length - 3, { projects: some }) : [some])));
      }
      const came = make("div", "tried-came", make("p", "", text(outcome)));
      came.append(aside([text(pressure) || say("no pressure"), text(face) || say("no face")].join(say("comma"))));
      if (platen !== dial) came.append(aside(say("platen", { temperature: text(platen).split("|").join(say("comma")) })));
      if (last !== null) came.append(aside(say("last", { day: text(last) })));
      return make("li", "tried tried-blank", head, make("p", "tried-set", figures(dial, " heat-words"), figures(time, "")), came);
    },
    blanks: (row) => {
      const [page, [name, substrate]] = data.blanks[row];
      return make("li", "", way(page, make("span", "", text(name)), make("span", "second", text(substrate))));
    },
    projects: (row) => {
      const [page, blank, [title]] = data.projects[row];
      return make("li", "", way(page, make("span", "", text(title)), make("span", "second", text(data.blanks[blank][1][0]))));
    },
  };
  const lists = { settings: "#settings ol", blanks: "#blanks ul", projects: "#projects ul" };

  let speaking = 0;
  const tell = (sentence) => {
    counted.textContent = sentence;
    clearTimeout(speaking);
    speaking = setTimeout(() => { said.textContent = sentence; }, 500); // not at every letter
  };

  const show = (words) => {
    const found = words ? search(words) : null;
    const sentence = [];
    for (const name of Object.keys(lists)) {
      const rows = found ? found[name] : [];
      const shown = rows.slice(0, MOST[name]);
      part(name).hidden = !shown.length;
      document.querySelector(lists[name]).replaceChildren(...shown.map(draw[name]));
      if (!rows.length) continue;
      sentence.push(count(shown.length < rows.length ? `some ${name}` : name, rows.length, { shown: figure(shown.length) }));
    }
    if (!found) return tell("");
    const read = found.readAs.map(([term, near]) => `${say("read as", { term, words: either.format(near.slice(0, 3)) })} `).join("");
    return tell(read + (sentence.length ? `${sentence.join(say("comma"))}.` : say("nothing")));
  };

  const keep = (words) => {
    try {
      history.replaceState(null, "", words ? "#" + new URLSearchParams({ words }) : location.pathname);
    } catch {
      // A browser that refuses this for files: the search works, the address does not follow.
    }
  };
  const inAddress = () =>
    new URLSearchParams(location.hash.slice(1)).get("words") || new URLSearchParams(location.search).get("words") || "";

  let waiting = 0;
  field.addEventListener("input", () => {
    cancelAnimationFrame(waiting);
    waiting = requestAnimationFrame(() => {
      const words = field.value.trim();
      keep(words);
      show(words);
    });
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  const restore = () => {
    const words = inAddress();
    if (words !== field.value.trim()) field.value = words;
    show(words);
  };
  window.addEventListener("hashchange", restore);
  restore();
  (window.requestIdleCallback || setTimeout)(index); // the first letter typed is not to wait for this
})();
