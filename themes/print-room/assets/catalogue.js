// Filters of the catalogue. The rows come from the data script; what is chosen is kept in the address after the #.
(() => {
  "use strict";
  const form = document.getElementById("filters");
  const data = window.catalogue;
  if (!form || !data) return;

  const { say, count: sayCount, figure } = window.sentences;
  const AT_ONCE = 48;
  const AT_FIRST = 6; // what a screen can show; the others follow, some a frame
  const A_FRAME = 12;
  const part = (id) => document.getElementById(id);
  const [listed, found, list, none, more, clear] = ["listed", "found", "found-pieces", "found-nothing", "more", "clear"].map(part);
  const [count, all, counted, pageNumber, said] = ["count", "total", "counted", "page-number", "said"].map(part);
  const selects = [...form.querySelectorAll("select")];
  const words = form.elements.namedItem("words");
  const root = form.dataset.root;
  const still = [count, all, counted].map((each) => [each, each.textContent]);

  // The data has a column for each thing said of a project; what many share is a number that names a text.
  const total = data.title.length;
  const text = (column, index) => data.texts[data[column][index]];

  // Without case and accents: “Crème” is found by “creme”. Plain letters, nearly all there are, need no taking apart.
  const folded = (words) => (/^[\x00-\x7f]*$/.test(words) ? words : words.normalize("NFD").replace(/\p{M}/gu, "")).toLowerCase();
  const shared = ["blank", "substrate", "method", "year"];
  let foldedTexts = null;
  const allTexts = [];
  const fold = (until) => {
    foldedTexts ||= data.texts.map(folded);
    for (let index = allTexts.length; index < until; index += 1) {
      const said = [...shared.map((column) => data[column][index]), ...data.for[index]].map((each) => foldedTexts[each]);
      allTexts.push(`${folded(`${data.title[index]} ${data.words[index]}`)} ${said.join(" ")}`);
    }
    return allTexts;
  };

  // Numbers of the projects that fit, newest first: a filter compares a number, and the words come last.
  const matching = (state) => {
    let fitting = null;
    const narrow = (fits) => {
      const next = [];
      if (fitting) for (const index of fitting) { if (fits(index)) next.push(index); }
      else for (let index = 0; index < total; index += 1) { if (fits(index)) next.push(index); }
      fitting = next;
    };
    for (const { name } of selects) {
      if (!state[name]) continue;
      const wanted = data.texts.indexOf(state[name]);
      if (name === "occasion") narrow((index) => data.for[index].includes(wanted));
      else narrow((index) => data[name][index] === wanted);
    }
    for (const word of folded(state.words).split(/\s+/).filter(Boolean)) {
      const texts = fold(total);
      narrow((index) => texts[index].includes(word));
    }
    return fitting || [];
  };

  // Tiles are clones of the page's own templates, so that the two kinds look alike.
  const model = part("piece").content.firstElementChild;
  const marks = new Map(
    [...document.querySelectorAll("template.material")].map((each) => [each.dataset.family, each.content.children]),
  );
  const piece = (index) => {
    const item = model.cloneNode(true);
    const at = (name) => item.querySelector(name);
    const [photo, field] = [at(".picture"), at(".no-picture")];
    const [swatch, large] = marks.get(text("family", index)) || [];
    const shown = data.pictures[index];
    if (shown) {
      const [modern, fallback, width, height, words] = shown;
      const [source, image] = [at("source"), at("img")];
      if (modern.endsWith(".avif")) source.type = "image/avif";
      source.srcset = encodeURI(root + modern);
      image.alt = words;
      image.width = width;
      image.height = height;
      image.src = root + fallback;
      field.remove();
    } else {
      photo.remove();
      if (large) field.append(large.cloneNode(true));
    }
    const name = at(".piece-name a");
    const title = data.title[index];
    const [page, press] = data.pages.map((each) => root + each.replace("*", encodeURIComponent(data.id[index])));
    name.textContent = title;
    name.href = page;
    if (swatch) at(".substrate").prepend(swatch.cloneNode(true));
    at(".piece-substrate").textContent = text("substrate", index);
    at(".piece-blank").textContent = text("blank", index);
    at(".piece-result").textContent = text("outcome", index) || say("none pressed");
    at(".piece-made").textContent = text("made", index);
    const card = at(".piece-more a");
    card.href = press;
    card.setAttribute("aria-label", say("card", { what: card.textContent, title }));
    return item;
  };

  let result = [];
  const build = (until) => {
    const some = document.createDocumentFragment();
    for (const index of result.slice(list.childElementCount, until)) some.append(piece(index));
    list.append(some);
  };
  let rest = 0;
  const buildRest = (until) => {
    build(Math.min(until, list.childElementCount + A_FRAME));
    if (list.childElementCount < Math.min(until, result.length)) rest = requestAnimationFrame(() => buildRest(until));
  };
  const show = (until, atFirst = until) => {
    cancelAnimationFrame(rest);
    build(Math.min(until, atFirst));
    if (atFirst < until) rest = requestAnimationFrame(() => buildRest(until));
    const shown = Math.min(until, result.length);
    more.hidden = shown >= result.length;
    count.textContent = figure(shown);
    return shown;
  };

  const chosenNow = () => Object.fromEntries([...selects, words].map((each) => [each.name, each.value.trim()]));
  const inAddress = () => {
    const state = new URLSearchParams(location.hash.slice(1));
    return Object.fromEntries([...selects, words].map((each) => [each.name, state.get(each.name) || ""]));
  };

  let speaking = 0;
  const tell = (sentence) => {
    clearTimeout(speaking);
    speaking = setTimeout(() => { said.textContent = sentence; }, 400);
  };

  const draw = (state, until = AT_ONCE, atFirst = AT_FIRST) => {
    const active = Object.values(state).some(Boolean);
    clear.hidden = !active;
    listed.hidden = active;
    found.hidden = !active;
    if (pageNumber) pageNumber.hidden = active;
    list.textContent = "";
    result = active ? matching(state) : [];
    if (!active) {
      cancelAnimationFrame(rest);
      for (const [each, words] of still) each.textContent = words;
      tell(say("all"));
      return;
    }
    show(until, atFirst);
    none.hidden = result.length > 0;
    all.textContent = figure(result.length);
    counted.textContent = sayCount("counted", result.length, { all: figure(total) });
    tell(sayCount("found", result.length));
  };

  const address = (state, shown) => {
    const kept = Object.entries(state).filter(([, word]) => word);
    if (kept.length && shown > AT_ONCE) kept.push(["shown", String(shown)]);
    return "#" + new URLSearchParams(kept);
  };
  const keep = (state, { again = false, shown = 0 } = {}) => {
    const target = address(state, shown);
    if (target === (location.hash || "#")) return;
    try {
      history[again ? "replaceState" : "pushState"](null, "", target);
    } catch {
      // A browser that refuses this for files: the filters work, the address does not follow.
    }
  };

  const changed = (again) => {
    const state = chosenNow();
    keep(state, { again });
    draw(state);
  };

  let waiting = 0;
  words.addEventListener("input", () => {
    cancelAnimationFrame(waiting);
    waiting = requestAnimationFrame(() => changed(Boolean(inAddress().words)));
  });
  for (const each of selects) each.addEventListener("change", () => changed(false));
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(() => { changed(false); words.focus(); }));
  more.addEventListener("click", () => {
    const first = list.childElementCount;
    const shown = show(first + AT_ONCE);
    keep(chosenNow(), { again: true, shown });
    tell(say("shown", { shown: figure(shown), all: figure(result.length) }));
    const next = list.children[first];
    if (next) next.querySelector("a").focus({ preventScroll: true });
  });

  const restore = () => {
    if (location.hash.length > 1 && !location.hash.includes("=")) return; // a place on the page, not a state
    const state = inAddress();
    for (const each of selects) {
      each.value = state[each.name];
      if (each.value !== state[each.name]) each.value = state[each.name] = ""; // a word that is no longer there
    }
    words.value = state.words;
    const shown = Number(new URLSearchParams(location.hash.slice(1)).get("shown")) || AT_ONCE;
    draw(state, Math.max(AT_ONCE, shown), Infinity);
  };
  window.addEventListener("popstate", restore);
  window.addEventListener("hashchange", restore);
  if (location.hash.includes("=")) restore();

  // The first letter typed is not to wait for this.
  const FOLDED_AT_ONCE = 500;
  const idle = window.requestIdleCallback || setTimeout;
  const foldSome = () => {
    fold(Math.min(allTexts.length + FOLDED_AT_ONCE, total));
    if (allTexts.length < total) idle(foldSome);
    else practise();
  };
  // What a browser does for the first time it does slowly: it looks for something, and draws some of it, before it is asked.
  const practise = () => {
    matching({ ...Object.fromEntries(selects.map((each) => [each.name, ""])), words: "e qq" });
    for (let index = 0; index < Math.min(AT_FIRST, total); index += 1) piece(index);
  };
  idle(foldSome);
})();
