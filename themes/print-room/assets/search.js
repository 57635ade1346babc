// Search as one types. The data script holds every text once; columns name texts by number, so a text is looked at once.
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
  // Plain letters, nearly all there are, need no taking apart.
  const folded = (text) =>
    /^[\x00-\x7f]*$/.test(text) ? text.toLowerCase() :
    text.toLowerCase().normalize("NFKD").replace(/[\u0300-\u036f]/g, "").normalize("NFC").replace(/[øłđæœı]/g, (each) => undivided[each]);

  // The words of a text: whole between spaces, in their parts, and figures with their units (400f, 300s).
  const wordsOf = (text) => {
    const plain = folded(text);
    const words = new Set();
    for (const each of plain.split(/[\s|]+/)) {
      words.add(each.replace(/^[.,;:()[\]'"“”]+|[.,;:()[\]'"“”]+$/g, ""));
      if (!/^[a-z\d]*$/.test(each)) for (const [word] of each.matchAll(/[\p{L}\p{N}]+/gu)) words.add(word);
    }
    if (/\d\s*°?\s*[cfs]/.test(plain)) {
      for (const [, number, unit] of plain.matchAll(/(\d+(?:\.\d+)?)\s*°?\s*([cfs])(?![\p{L}\p{N}])/gu)) words.add(number + unit);
    }
    words.delete("");
    return words;
  };

  // Of each word the numbers of the texts that say it; what else is compared of a word is worked out once, too.
  const numbersOf = new Map();
  const measures = { c: [], f: [], s: [] }; // [figure, word], for words such as 400f
  const lettered = []; // [word, its letters as bits], for words that may be misspelt
  const bits = (word) => {
    let letters = 0;
    for (let at = 0; at < word.length; at += 1) letters |= 1 << (word.charCodeAt(at) & 31);
    return letters;
  };
  const learn = (word) => {
    const numbers = [];
    numbersOf.set(word, numbers);
    const unit = word[word.length - 1];
    const value = unit in measures ? Number(word.slice(0, -1)) : NaN;
    if (!Number.isNaN(value)) measures[unit].push([value, word]);
    if (/^\p{L}+$/u.test(word)) lettered.push([word, bits(word)]);
    return numbers;
  };
  // There may be tens of thousands of texts: they are read in slices, so that no key waits for them.
  const SLICE_MS = 6;
  let read = 0;
  const index = () => {
    const end = performance.now() + SLICE_MS;
    for (; read < data.texts.length; read += 1) {
      if (read % 64 === 0 && performance.now() > end) return false;
      for (const word of wordsOf(read in data.also ? `${data.texts[read]} ${data.also[read]}` : data.texts[read])) {
        (numbersOf.get(word) || learn(word)).push(read);
      }
    }
    return true;
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
  const bitCount = (letters) => {
    let count = 0;
    for (; letters; letters &= letters - 1) count += 1;
    return count;
  };
  const misspelt = (term) => {
    if (term.length < 3 || term.length > 40 || !/^\p{L}+$/u.test(term)) return [];
    let most = term.length < 6 ? 1 : 2;
    let near = [];
    const letters = bits(term);
    for (const [word, others] of lettered) {
      // A slip puts one letter for another at the most.
      if (Math.abs(word.length - term.length) > most || bitCount(letters ^ others) > 2 * most) continue;
      const apart = slips(term, word, most);
      if (apart < most) [most, near] = [apart, []];
      if (apart <= most) near.push(word);
    }
    return near;
  };

  // Every word that a term may mean, with what it is worth.
  const NEAR = { c: 1.1, f: 2, s: 0.5 }; // 400 °F is 204.4 °C, which some set as 204 and some as 205
  const fitting = (term, give) => {
    if (numbersOf.has(term)) give(term, EXACT);
    const measure = /^(\d+(?:\.\d+)?)([cfs])$/.exec(term);
    if (measure) {
      const [, number, unit] = measure;
      for (const [value, word] of measures[unit]) if (Math.abs(value - Number(number)) <= NEAR[unit]) give(word, WITHIN);
    } else if (/^\d+$/.test(term)) {
      for (const word of numbersOf.keys()) if (word.startsWith(term) && word !== term && !/\d/.test(word[term.length])) give(word, BEGINS);
    } else if (term.length >= 3 || /[^\x00-\x7f]/.test(term)) {
      for (const word of numbersOf.keys()) {
        const at = word.indexOf(term);
        if (at >= 0) give(word, at === 0 && term.length >= 2 ? BEGINS : WITHIN);
      }
    } else if (term.length === 2) {
      for (const word of numbersOf.keys()) if (word.startsWith(term)) give(word, BEGINS);
    }
  };

  // What each text is worth to a term; a word with dashes that nothing has is taken to its parts.
  const worths = (term, terms, readAs) => {
    const found = new Uint8Array(data.texts.length);
    let any = false;
    const give = (word, value) => {
      any = true;
      for (const number of numbersOf.get(word)) if (found[number] < value) found[number] = value;
    };
    fitting(term, give);
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

  const BEST = EXACT * 4 + THING;
  const weighed = (most, weight) => most && most * 4 + weight;
  const best = (found, numbers) => {
    let most = 0;
    for (const number of numbers) if (found[number] > most) most = found[number];
    return most;
  };
  // A column of several to a row: of row n they stand from starts[n] to starts[n + 1].
  const several = ([counts, all]) => {
    const starts = new Uint32Array(counts.length + 1);
    counts.forEach((count, row) => { starts[row + 1] = starts[row] + count; });
    return { starts, all, of: (row) => all.slice(starts[row], starts[row + 1]) };
  };
  const bestOf = (found, { starts, all }, row) => {
    let most = 0;
    for (let at = starts[row]; at < starts[row + 1]; at += 1) if (found[all[at]] > most) most = found[all[at]];
    return most;
  };
  const { settings } = data;
  const [usedFor, defects, told] = [settings.projects, settings.defects, data.projects.texts].map(several);
  const totals = { settings: settings.blank.length, blanks: data.blanks.length, projects: data.projects.blank.length };

  // Of the rows that say all terms how many there are, and the best; equals stay in the order of the data, which is best
  // supported first. Only those that are shown are put in order.
  const ranked = (name, values) => {
    const total = totals[name];
    const sums = new Uint16Array(values[0]);
    for (const value of values.slice(1)) {
      for (let row = 0; row < total; row += 1) sums[row] = sums[row] && value[row] && sums[row] + value[row];
    }
    const tally = new Uint32Array(BEST * values.length + 1);
    for (let row = 0; row < total; row += 1) tally[sums[row]] += 1;
    const all = total - tally[0];
    const shown = Math.min(all, MOST[name]);
    let least = tally.length; // of what is shown, with as many of the least as there is room for
    let room = shown;
    while (room > 0) {
      least -= 1;
      if (tally[least] >= room) break;
      room -= tally[least];
    }
    const rows = [];
    for (let row = 0; rows.length < shown; row += 1) {
      if (sums[row] > least) rows.push(row);
      else if (sums[row] === least && room > 0) { rows.push(row); room -= 1; }
    }
    return { all, rows: rows.sort((a, b) => sums[b] - sums[a] || a - b) };
  };

  const { blank, press, dial, platen, time, pressure, face } = settings;
  const weigh = (values, found, blanks, presses, titles) => {
    for (let row = 0; row < values.length; row += 1) {
      let manner = found[dial[row]];
      if (found[platen[row]] > manner) manner = found[platen[row]];
      if (found[time[row]] > manner) manner = found[time[row]];
      if (found[pressure[row]] > manner) manner = found[pressure[row]];
      if (found[face[row]] > manner) manner = found[face[row]];
      let most = weighed(manner, MANNER);
      if (blanks[blank[row]] > most) most = blanks[blank[row]];
      if (presses[press[row]] > most) most = presses[press[row]];
      const defect = weighed(bestOf(found, defects, row), DEFECT);
      if (defect > most) most = defect;
      const project = bestOf(titles, usedFor, row);
      values[row] = project > most ? project : most;
    }
  };

  // What the rows of each list are worth to a term.
  const valuesOf = (found) => {
    const blanks = Uint8Array.from(data.blanks, ([, texts]) => weighed(best(found, texts), THING));
    const presses = Uint8Array.from([...data.presses, ["", []]], ([, texts]) => weighed(best(found, texts), MANNER));
    const titles = new Uint8Array(totals.projects);
    const projects = new Uint8Array(totals.projects);
    for (let row = 0; row < titles.length; row += 1) {
      const title = weighed(bestOf(found, told, row), PROJECT);
      titles[row] = title;
      projects[row] = Math.max(title, blanks[data.projects.blank[row]]);
    }
    const values = new Uint8Array(totals.settings);
    weigh(values, found, blanks, presses, titles);
    return { settings: values, blanks, projects };
  };

  // Terms stay while others are typed: what the last ones were worth is kept.
  let before = new Map();
  const search = (text) => {
    const kept = new Map();
    const readAs = [];
    for (const term of asked(text)) {
      let known = before.get(term);
      if (!known) {
        const [terms, read] = [[], []];
        worths(term, terms, read);
        known = { values: terms.map(valuesOf), readAs: read };
      }
      kept.set(term, known);
      readAs.push(...known.readAs);
    }
    before = kept;
    const values = [...kept.values()].flatMap((each) => each.values);
    if (!values.length) return null;
    const lists = ["settings", "blanks", "projects"].map((name) => [name, ranked(name, values.map((each) => each[name]))]);
    return { readAs, ...Object.fromEntries(lists) };
  };

  const make = (name, kind, ...inside) => {
    const made = document.createElement(name);
    if (kind) made.className = kind;
    made.append(...inside);
    return made;
  };
  const text = (number) => data.texts[number];
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

  const project = (row) => {
    const [title, folder] = told.of(row);
    return [data.pages.replace("*", text(folder)), text(title)];
  };
  const draw = {
    settings: (row) => {
      const of = (column) => settings[column][row];
      const [dial, platen] = [of("dial"), of("platen")];
      const [page, [name]] = data.blanks[of("blank")];
      const head = make("div", "tried-name", make("h3", "", way(page, text(name))));
      const press = data.presses[of("press")];
      if (press) head.append(aside(text(press[1][0])));
      const projects = usedFor.of(row);
      if (projects.length) {
        const some = make("span", "");
        projects.slice(0, 3).forEach((each, at) => {
          if (at) some.append(say("comma"));
          some.append(way(...project(each)));
        });
        head.append(aside(...(projects.length > 3 ? pieces("more", projects.length - 3, { projects: some }) : [some])));
      }
      const came = make("div", "tried-came", make("p", "", text(of("outcome"))));
      came.append(aside([text(of("pressure")) || say("no pressure"), text(of("face")) || say("no face")].join(say("comma"))));
      if (platen && platen !== dial) came.append(aside(say("platen", { temperature: text(platen).split("|").join(say("comma")) })));
      if (of("last")) came.append(aside(say("last", { day: text(of("last")) })));
      return make("li", "tried tried-blank", head, make("p", "tried-set", figures(dial, " heat-words"), figures(of("time"), "")), came);
    },
    blanks: (row) => {
      const [page, [name, substrate]] = data.blanks[row];
      return make("li", "", way(page, make("span", "", text(name)), make("span", "second", text(substrate))));
    },
    projects: (row) => {
      const [page, title] = project(row);
      const [, [blank]] = data.blanks[data.projects.blank[row]];
      return make("li", "", way(page, make("span", "", title), make("span", "second", text(blank))));
    },
  };
  const lists = { settings: "#settings ol", blanks: "#blanks ul", projects: "#projects ul" };

  let speaking = 0;
  const tell = (sentence) => {
    counted.textContent = sentence;
    clearTimeout(speaking);
    speaking = setTimeout(() => { said.textContent = sentence; }, 500); // not at every letter
  };

  // What a screen can show is drawn at once, the rest some rows a frame.
  const AT_FIRST = 4;
  const A_FRAME = 12;
  let drawing = 0;
  const drawRest = (rest) => {
    let room = A_FRAME;
    while (rest.length && room > 0) {
      const [name, rows, from] = rest[0];
      const some = rows.slice(from, from + room);
      const list = document.querySelector(lists[name]);
      if (from) list.append(...some.map(draw[name]));
      else list.replaceChildren(...some.map(draw[name]));
      part(name).hidden = !rows.length;
      room -= some.length;
      if (from + some.length < rows.length) rest[0] = [name, rows, from + some.length];
      else rest.shift();
    }
    if (rest.length) drawing = requestAnimationFrame(() => drawRest(rest));
  };

  let indexed = false;
  let wanted = ""; // what was asked for before everything was read
  const show = (words) => {
    wanted = words;
    if (!indexed) return;
    cancelAnimationFrame(drawing);
    const found = words ? search(words) : null;
    const sentence = [];
    const rest = [];
    let room = AT_FIRST;
    for (const name of Object.keys(lists)) {
      const { all, rows } = found ? found[name] : { all: 0, rows: [] };
      const first = rows.slice(0, room);
      document.querySelector(lists[name]).replaceChildren(...first.map(draw[name]));
      part(name).hidden = !first.length;
      room -= first.length;
      if (first.length < rows.length) rest.push([name, rows, first.length]);
      if (all) sentence.push(count(rows.length < all ? `some ${name}` : name, all, { shown: figure(rows.length) }));
    }
    if (rest.length) drawing = requestAnimationFrame(() => drawRest(rest));
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
  // What a browser does for the first time it does slowly. It does some of this before the first key, a slice at a time,
  // on worths of every kind, so that it makes quick what is needed.
  const SLICE_ROWS = 4096;
  const practise = (from) => {
    const some = (length) => Uint8Array.from({ length }, (_, at) => [0, 0, WITHIN, 0, BEGINS, 0, EXACT][at % 7]);
    const to = Math.min(from + SLICE_ROWS, totals.settings);
    const [found, blanks, titles] = [data.texts.length, totals.blanks, totals.projects].map(some);
    weigh(new Uint8Array(to), found, blanks, some(data.presses.length + 1), titles, from, to);
    ranked("projects", [titles, titles]);
    for (const term of ["qqqqqq", "qq", "99"]) fitting(term, () => {});
    misspelt("qqqqqq");
    if (totals.settings) draw.settings(0);
    if (totals.projects) draw.projects(0);
    count("settings", totals.settings);
    if (to < totals.settings) setTimeout(practise, 0, to);
  };
  const prepare = () => {
    indexed = index();
    if (!indexed) setTimeout(prepare);
    else if (wanted) show(wanted);
    else practise(0);
  };
  restore();
  prepare();
})();
