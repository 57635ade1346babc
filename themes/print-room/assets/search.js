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
    settings = columns();
  };

  // Settings by column, since there may be very many: a row's number gives the number of a text, or of none.
  let settings = null;
  const columns = () => {
    const rows = data.settings;
    const none = data.texts.length;
    const one = (at, absent) => Uint32Array.from(rows, (row) => row[at] ?? absent);
    const several = (at) => {
      const begins = new Uint32Array(rows.length + 1);
      rows.forEach((row, number) => { begins[number + 1] = begins[number] + row[at].length; });
      return { begins, all: Uint32Array.from(rows.flatMap((row) => row[at])) };
    };
    return {
      blank: one(0, 0),
      press: one(1, data.presses.length),
      manner: [2, 3, 4, 5, 6].map((at) => one(at, none)),
      projects: several(9),
      defects: several(10),
    };
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
  const rowsOfSlips = [0, 1, 2].map(() => new Uint8Array(64));
  const slips = (a, b, most) => {
    let [before, last, now] = rowsOfSlips;
    for (let j = 0; j <= b.length; j += 1) last[j] = j;
    for (let i = 1; i <= a.length; i += 1) {
      now[0] = i;
      let least = i;
      for (let j = 1; j <= b.length; j += 1) {
        let fewest = Math.min(last[j] + 1, now[j - 1] + 1, last[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) fewest = Math.min(fewest, before[j - 2] + 1);
        now[j] = fewest;
        if (fewest < least) least = fewest;
      }
      if (least > most) return most + 1;
      [before, last, now] = [last, now, before];
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
  // Returns what a word is worth to a term.
  const judge = (term) => {
    const measure = /^(\d+(?:\.\d+)?)([cfs])$/.exec(term);
    if (measure) {
      const [wanted, unit] = [Number(measure[1]), measure[2]];
      return (word) => {
        if (word === term) return EXACT;
        return word.endsWith(unit) && Math.abs(Number(word.slice(0, -1)) - wanted) <= NEAR[unit] ? WITHIN : 0;
      };
    }
    const begins = term.length >= 2 ? BEGINS : 0;
    const within = term.length >= 3 || /[^\x00-\x7f]/.test(term) ? WITHIN : 0;
    const isNumber = /^\d+$/.test(term);
    return (word) => {
      const at = word.indexOf(term);
      if (at < 0) return 0;
      if (word === term) return EXACT;
      if (isNumber) return at === 0 && !/\d/.test(word[term.length]) ? BEGINS : 0;
      return at === 0 ? begins : within;
    };
  };

  // What each text is worth by the words that it says; null where no text says any.
  const given = (words, value) => {
    const found = new Uint8Array(data.texts.length + 1); // the last stands for no text
    let any = false;
    for (const word of words) {
      const worth = value(word);
      if (!worth) continue;
      any = true;
      for (const number of numbersOf.get(word)) if (found[number] < worth) found[number] = worth;
    }
    return any ? found : null;
  };

  // Adds what the texts are worth to a term, which is known of those that stay while another is typed. A word with dashes
  // that nothing has is taken to its parts.
  const known = new Map();
  const worths = (term, terms, readAs) => {
    if (!known.has(term)) {
      if (known.size > 30) known.clear();
      known.set(term, given(numbersOf.keys(), judge(term)));
    }
    const found = known.get(term);
    const parts = found ? [] : term.match(/[\p{L}\p{N}]+/gu) || [];
    if (parts.length > 1) {
      for (const each of parts) worths(each, terms, readAs);
      return;
    }
    const near = found ? [] : misspelt(term);
    if (near.length) readAs.push([term, near]);
    terms.push(found || given(near, () => MISSPELT) || new Uint8Array(data.texts.length + 1));
  };

  const best = (found, numbers, weight) => {
    let most = 0;
    for (const number of numbers) if (number !== null && found[number] > most) most = found[number];
    return most && most * 4 + weight;
  };

  // How many rows say all terms, and the best of them; equals stay in the order of the data, which is best supported first.
  const ranked = (of, terms, value, most) => {
    let total = 0;
    const first = []; // the first rows of each sum
    for (let row = 0; row < of; row += 1) {
      let sum = 0;
      for (let term = 0; term < terms.length; term += 1) {
        const worth = value(row, term);
        if (!worth) { sum = 0; break; }
        sum += worth;
      }
      if (!sum) continue;
      total += 1;
      const alike = (first[sum] ||= []);
      if (alike.length < most) alike.push(row);
    }
    return { total, rows: first.reverse().flat().slice(0, most) };
  };

  const search = (text) => {
    index();
    const readAs = [];
    const terms = [];
    for (const term of asked(text)) worths(term, terms, readAs);
    if (!terms.length) return null;
    const each = (rows, texts, weight) =>
      terms.map((found) => {
        const most = new Uint8Array(rows.length + 1); // the last stands for none
        rows.forEach((row, number) => { most[number] = best(found, row[texts], weight); });
        return most;
      });
    const blanks = each(data.blanks, 1, THING);
    const presses = each(data.presses, 1, MANNER);
    const titles = each(data.projects, 2, PROJECT);
    const most = ({ begins, all }, row, of) => {
      let found = 0;
      for (let at = begins[row]; at < begins[row + 1]; at += 1) if (of[all[at]] > found) found = of[all[at]];
      return found;
    };
    const setting = (row, term) => {
      const found = terms[term];
      let manner = 0;
      for (const column of settings.manner) if (found[column[row]] > manner) manner = found[column[row]];
      const defect = most(settings.defects, row, found);
      return Math.max(
        blanks[term][settings.blank[row]],
        presses[term][settings.press[row]],
        manner && manner * 4 + MANNER,
        defect && defect * 4 + DEFECT,
        most(settings.projects, row, titles[term]),
      );
    };
    return {
      readAs,
      settings: ranked(data.settings.length, terms, setting, MOST.settings),
      blanks: ranked(data.blanks.length, terms, (row, term) => blanks[term][row], MOST.blanks),
      projects: ranked(
        data.projects.length,
        terms,
        (row, term) => Math.max(titles[term][row], blanks[term][data.projects[row][1]]),
        MOST.projects,
      ),
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
      const { total, rows } = found ? found[name] : { total: 0, rows: [] };
      part(name).hidden = !total;
      document.querySelector(lists[name]).replaceChildren(...rows.map(draw[name]));
      if (!total) continue;
      sentence.push(count(rows.length < total ? `some ${name}` : name, total, { shown: figure(rows.length) }));
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
