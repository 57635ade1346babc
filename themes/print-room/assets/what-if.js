// Works a cost sheet out anew for figures that are tried. The rules are those of the sheet itself; figures are exact
// fractions until they are shown, so that no price lands one ending off.
(() => {
  "use strict";
  const section = document.getElementById("what-if");
  if (!section || typeof BigInt !== "function") return;
  const part = (id) => document.getElementById(id);
  const data = JSON.parse(section.dataset.sheet);
  const form = part("tries");
  const { say, locale } = window.sentences;

  // Fractions: [above, below] in lowest terms, below more than 0.
  const divisor = (a, b) => { while (b) [a, b] = [b, a % b]; return a; };
  const fraction = (above, below = 1n) => {
    if (below < 0n) [above, below] = [-above, -below];
    const common = divisor(above < 0n ? -above : above, below) || 1n;
    return [above / common, below / common];
  };
  const plus = (a, b) => fraction(a[0] * b[1] + b[0] * a[1], a[1] * b[1]);
  const minus = (a, b) => plus(a, [-b[0], b[1]]);
  const times = (a, b) => fraction(a[0] * b[0], a[1] * b[1]);
  const over = (a, b) => fraction(a[0] * b[1], a[1] * b[0]);
  const less = (a, b) => a[0] * b[1] < b[0] * a[1];
  const ceiling = ([above, below]) => (above > 0n ? (above + below - 1n) / below : above / below);
  const whole = (value) => fraction(BigInt(value));
  const ONE = whole(1);
  const NONE = whole(0);

  const given = (text) => {
    if (text === null || text === undefined) return null;
    const [above, below = "1"] = text.split("/");
    return fraction(BigInt(above), BigInt(below));
  };

  // A figure as people of the shop's place write it: 12.50 or 12,50; null where it is none.
  const point = new Intl.NumberFormat(locale).formatToParts(1.5).find((each) => each.type === "decimal").value;
  const read = (text) => {
    const plain = text.trim().replace(/\s/g, "").replace(point, ".").replace(",", ".");
    const found = /^(\d*)(?:\.(\d*))?$/.exec(plain);
    if (!found || !(found[1] || found[2])) return null;
    const [, before, after = ""] = found;
    return fraction(BigInt(before + after || "0"), 10n ** BigInt(after.length));
  };

  // Halves away from zero, as on the sheet.
  const rounded = ([above, below], digits) => {
    const scaled = (above < 0n ? -above : above) * 10n ** BigInt(digits);
    const steps = (2n * scaled + below) / (2n * below);
    return Number(above < 0n ? -steps : steps) / 10 ** digits;
  };
  const money = new Intl.NumberFormat(locale, {
    style: "currency",
    currency: data.currency,
    currencyDisplay: "symbol",
    minimumFractionDigits: data.digits,
    maximumFractionDigits: data.digits,
  });
  const number = new Intl.NumberFormat(locale, { maximumFractionDigits: 1 });
  const shown = (amount) => money.format(rounded(amount, data.digits) || 0);
  const percent = (share) => say("percent", { n: number.format(rounded(times(share, whole(100)), 1) || 0) }).replace(" ", "\u00a0");

  const lines = data.lines.map((line) => ({
    ...line,
    once: given(line.once),
    sheets: line.sheets ? [BigInt(line.sheets[0]), given(line.sheets[1])] : null,
  }));
  const overhead = given(data.overhead);
  const pieces = BigInt(data.pieces);

  const lineAmount = (line, { batch, share, labour }) => {
    if (line.once === null || (line.labour && labour === null)) return null;
    let amount = line.once;
    if (line.sheets) {
      const [fits, price] = line.sheets;
      amount = times(whole(ceiling(fraction(batch * pieces, fits))), price);
    }
    if (line.labour) amount = times(amount, labour);
    if (line.shared) amount = over(amount, whole(batch));
    return line.usedUp ? over(amount, share) : amount;
  };
  const sum = (amounts) => amounts.reduce((total, amount) => (amount ? plus(total, amount) : total), NONE);
  const amounts = (tried) => {
    const found = lines.map((line) => (line.overhead ? null : lineAmount(line, tried)));
    const onTop = overhead && times(sum(found), overhead);
    return lines.map((line, index) => (line.overhead ? onTop : found[index]));
  };

  const terms = Object.fromEntries(
    ["ending", "margin", "markup", "feeShare", "feeFixed", "taxRate"].map((name) => [name, given(data.terms[name])]),
  );
  const taxed = plus(ONE, terms.taxRate);
  // P = (C + k) / ((1 - m)/(1 + r) - f) for a margin, P = (C (1 + u) + k) / (1/(1 + r) - f) for a markup.
  const workedOut = (cost) => {
    let left, toBear;
    if (terms.margin) {
      left = minus(over(minus(ONE, terms.margin), taxed), terms.feeShare);
      toBear = plus(cost, terms.feeFixed);
    } else if (terms.markup) {
      left = minus(over(ONE, taxed), terms.feeShare);
      toBear = plus(times(cost, plus(ONE, terms.markup)), terms.feeFixed);
    }
    if (!left || !less(NONE, left)) return null;
    const paid = over(toBear, left);
    const exact = data.terms.taxIncluded ? paid : over(paid, taxed);
    return times(whole(ceiling(over(exact, terms.ending))), terms.ending);
  };
  const takenApart = (price, cost) => {
    const paid = data.terms.taxIncluded ? price : times(price, taxed);
    const net = over(paid, taxed);
    const fee = plus(times(paid, terms.feeShare), terms.feeFixed);
    const profit = minus(minus(net, fee), cost);
    return {
      profit,
      margin: net[0] ? over(profit, net) : null,
      markup: cost[0] ? over(profit, cost) : null,
    };
  };

  const fields = ["batch", "share", "labour", "price"].map((name) => form.elements.namedItem(name));
  const [batchField, shareField, labourField, priceField] = fields;
  const original = new Map(fields.map((field) => [field, field.defaultValue]));

  // Fields left as they were mean the record's exact figure, not the rounded one in the field.
  const value = (field, record) =>
    field.value.trim() === original.get(field).trim() ? record : read(field.value);
  const faultOf = ({ batch, share, labour, price }) => {
    if (!batch || batch[1] !== 1n || batch[0] < 1n) return [batchField, say("batch wrong")];
    if (!share || !less(NONE, share) || less(ONE, share)) return [shareField, say("yield wrong")];
    if (labour === null && labourField.value.trim()) return [labourField, say("labour wrong")];
    if (price === null && priceField.value.trim()) return [priceField, say("price wrong")];
    return null;
  };

  const fault = part("tries-fault");
  const figures = part("tried-figures");
  const put = (id, text) => { part(id).textContent = text; };
  const rows = [...part("cost-lines").rows];
  const columns = [...document.querySelectorAll(".tried")];
  const said = part("said");
  let speaking = 0;
  const tell = (sentence) => {
    clearTimeout(speaking);
    speaking = setTimeout(() => { said.textContent = sentence; }, 700);
  };

  const wordsOf = (price, typed, apart, complete) => {
    if (!price) return say("no price", { why: data.terms.noPrice });
    const bound = (name, amount) => (complete ? amount : say(name, { amount }));
    const words = [];
    if (apart.margin) words.push(say("margin", { margin: bound("at most", percent(apart.margin)) }));
    if (typed && less(apart.profit, NONE)) {
      words.push(say("loses", { amount: bound("at least", shown([-apart.profit[0], apart.profit[1]])) }));
    } else if (typed && terms.margin && apart.margin && less(apart.margin, terms.margin)) {
      words.push(say("margin wanted", { margin: percent(terms.margin) }));
    } else if (typed && !terms.margin && terms.markup && apart.markup && less(apart.markup, terms.markup)) {
      words.push(say("markup", { markup: percent(apart.markup), wanted: percent(terms.markup) }));
    }
    return words.join(" ");
  };

  const work = () => {
    const share = value(shareField, given(data.share));
    const tried = {
      batch: value(batchField, whole(data.batch)),
      share: share && shareField.value.trim() !== original.get(shareField).trim() ? over(share, whole(100)) : share,
      labour: value(labourField, given(data.labour)),
      price: value(priceField, given(data.typed)),
    };
    const wrong = faultOf(tried);
    for (const field of fields) field.toggleAttribute("aria-invalid", false);
    figures.hidden = Boolean(wrong);
    part("tried-words").hidden = Boolean(wrong);
    fault.textContent = wrong ? wrong[1] : "";
    const changed = fields.some((field) => field.value.trim() !== original.get(field).trim());
    for (const cell of columns) cell.hidden = !changed || Boolean(wrong);
    if (wrong) {
      wrong[0].setAttribute("aria-invalid", "true");
      tell(wrong[1]);
      return;
    }

    const found = amounts({ ...tried, batch: tried.batch[0] });
    const cost = sum(found);
    const complete = found.every((amount) => amount !== null);
    const bound = (name, amount) => (complete ? amount : say(name, { amount }));
    const typed = tried.price !== null;
    const price = typed ? tried.price : workedOut(cost);
    const apart = price && takenApart(price, cost);
    rows.forEach((row, index) => {
      row.lastElementChild.textContent = found[index] ? shown(found[index]) : say("not known");
      row.classList.toggle("changed", row.cells[2].textContent !== row.lastElementChild.textContent);
    });
    const costWords = bound("at least", shown(cost));
    put("tried-total", costWords);
    put("tried-cost", costWords);
    put("tried-price-name", say(typed ? "typed" : "worked out"));
    put("tried-price", !price ? say("none") : typed ? shown(price) : bound("at least", shown(price)));
    put("tried-left", price ? bound("at most", shown(apart.profit)) : say("not known"));
    part("tried-left").classList.toggle("warn-words", Boolean(price) && less(apart.profit, NONE));
    const words = wordsOf(price, typed, apart, complete);
    put("tried-words", words);
    if (changed) {
      const [priceWords, left] = ["tried-price", "tried-left"].map((id) => part(id).textContent);
      tell(say(price ? "told priced" : "told", { cost: costWords, price: priceWords, left, words }));
    }
  };

  form.addEventListener("input", work);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(() => { work(); tell(say("back")); batchField.focus(); }));
  section.hidden = false;
  work();
})();
