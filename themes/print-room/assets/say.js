// What the page's scripts say. The sentences stand in the page, in its language; figures and names are filled in here.
(() => {
  "use strict";
  const held = document.getElementById("sentences");
  if (!held) return;
  const { locale: own, said } = JSON.parse(held.textContent);
  const locale = new Intl.Locale(own, { numberingSystem: "latn" }).toString(); // the digits of the pages
  const language = document.documentElement.lang || "en";
  const rules = new Intl.PluralRules(language);
  const leftwards = document.documentElement.dir === "rtl";
  const numbers = new Intl.NumberFormat(locale);
  const figure = (value) => numbers.format(value);

  // Each part keeps its own order in a sentence from right to left, so that “193 °C” stays that.
  const apart = (part) => (leftwards ? ["\u2068", part, "\u2069"] : [part]);
  const pieces = (sentence, parts) =>
    sentence.split(/(\{\w+\})/).flatMap((piece) => {
      const name = piece.startsWith("{") && piece.slice(1, -1);
      return name && name in parts ? apart(parts[name]) : piece ? [piece] : [];
    });
  const form = (name, count) => said[name][rules.select(count)] ?? said[name].other;

  window.sentences = {
    language,
    locale,
    figure,
    apart: (text) => apart(text).join(""),
    say: (name, parts = {}) => pieces(said[name], parts).join(""),
    count: (name, count, parts = {}) => pieces(form(name, count), { n: figure(count), ...parts }).join(""),
    // The same as texts and elements, where a part is an element.
    pieces: (name, count, parts) => pieces(form(name, count), { n: figure(count), ...parts }),
  };
})();
