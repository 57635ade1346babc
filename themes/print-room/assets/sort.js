// The overview of costs: sorts by a heading, shows more, and lists gifts under a sum. Rows come from the data script;
// without it the page's own table and list stand.
(() => {
  "use strict";
  const rows = window.costRows;
  const part = (id) => document.getElementById(id);
  const body = part("cost-rows");
  if (!body || !Array.isArray(rows)) return;

  // A row of the data script, in the order that the page's code writes it.
  const AT = Object.fromEntries(
    [
      ...["project", "page", "sheet", "cost", "costFigure", "price", "priceFigure", "left", "leftFigure"],
      ...["margin", "marginFigure", "hour", "hourFigure", "good", "goodFigure", "stock", "items", "likely", "loses", "paid"],
    ].map((name, index) => [name, index]),
  );
  const COLUMNS = ["project", "costFigure", "priceFigure", "leftFigure", "marginFigure", "hourFigure", "goodFigure", "stock"];
  const AT_ONCE = 100;
  const GIFTS_AT_ONCE = 60;
  const root = body.dataset.root;
  const first = Number(body.dataset.first);
  const { say, count, figure, locale } = window.sentences;
  const words = new Intl.Collator(locale, { numeric: true, sensitivity: "base" });

  // Rows that the page came with are kept; others are clones of the first one.
  const elements = new Map([...body.rows].map((element, index) => [rows[first + index], element]));
  const model = body.rows[0].cloneNode(true);
  const second = (text) => Object.assign(document.createElement("span"), { className: "second warn-words", textContent: text });
  const element = (row) => {
    if (elements.has(row)) return elements.get(row);
    const made = model.cloneNode(true);
    const [project, sheet] = made.querySelectorAll("a");
    project.textContent = row[AT.project];
    project.href = root + row[AT.page];
    sheet.href = root + row[AT.sheet];
    sheet.setAttribute("aria-label", say("sheet", { what: sheet.textContent, title: row[AT.project] }));
    const shown = [
      ...[row[AT.cost], row[AT.price] ?? say("no price"), row[AT.left] ?? "", row[AT.margin] ?? "", row[AT.hour] ?? say("not known")],
      ...[row[AT.good], row[AT.stock] === null ? say("not counted") : figure(row[AT.stock])],
    ];
    shown.forEach((text, index) => { made.cells[index + 1].textContent = text; });
    made.cells[3].classList.toggle("warn-words", Boolean(row[AT.loses]));
    if (row[AT.loses]) made.cells[3].append(second(say("loses")));
    elements.set(row, made);
    return made;
  };

  const more = part("more");
  const heads = [...part("sort-heads").cells];
  const names = heads.map((head) => head.textContent);
  const said = part("sort-said");
  let order = rows;
  let shown = body.rows.length;

  const draw = () => {
    body.replaceChildren(...order.slice(0, shown).map(element));
    more.hidden = shown >= order.length;
    const pages = part("pages");
    const number = part("page-number");
    pages.hidden = true;
    if (number) number.hidden = true;
  };

  // What has no figure stays last either way.
  const sort = (column, direction) => {
    const at = AT[COLUMNS[column]];
    const compare = column === 0 ? (one, other) => words.compare(one[at], other[at]) : (one, other) => one[at] - other[at];
    const missing = (row) => row[at] === null;
    order = [...rows].sort((one, other) =>
      missing(one) || missing(other) ? missing(one) - missing(other) : direction * compare(one, other));
    heads.forEach((head, index) => {
      if (index === column) head.setAttribute("aria-sort", direction > 0 ? "ascending" : "descending");
      else head.removeAttribute("aria-sort");
    });
    shown = Math.max(Math.min(shown, AT_ONCE), Math.min(AT_ONCE, rows.length));
    draw();
    const inOrder = column === 0 ? ["from a", "from z"] : ["smallest", "largest"];
    said.textContent = say(inOrder[direction > 0 ? 0 : 1], { column: names[column] });
  };

  heads.forEach((head, column) => {
    const button = Object.assign(document.createElement("button"), { type: "button", className: "sort", textContent: names[column] });
    head.replaceChildren(button);
    button.addEventListener("click", () => sort(column, head.getAttribute("aria-sort") === "ascending" ? -1 : 1));
  });
  more.addEventListener("click", () => {
    const next = shown;
    shown += AT_ONCE;
    draw();
    said.textContent = say("shown", { shown: figure(body.rows.length), all: figure(rows.length) });
    body.rows[next]?.querySelector("a").focus({ preventScroll: true });
  });

  // Gifts: what can be made now for no more than a sum, tax and all.
  const form = part("gifts");
  if (!form) return;
  const list = part("gift-list");
  const counted = part("gifts-count");
  const nothing = part("gifts-nothing");
  const moreGifts = part("gifts-more");
  const giftsSaid = part("gifts-said");
  const input = form.elements.namedItem("limit");
  const makeable = rows
    .filter((row) => row[AT.items] > 0)
    .sort((one, other) => {
      const [a, b] = [one[AT.priceFigure], other[AT.priceFigure]];
      if (a === null || b === null) return (a === null) - (b === null);
      return a - b;
    });
  const sample = list.firstElementChild;
  const gift = (row) => {
    const made = sample.cloneNode(true);
    const link = made.querySelector("a");
    link.href = root + row[AT.page];
    link.firstElementChild.textContent = row[AT.project];
    const line = link.lastElementChild;
    line.firstElementChild.textContent = row[AT.price] ?? say("without price");
    line.lastElementChild.textContent = say("likely", { likely: figure(row[AT.likely]), all: figure(row[AT.items]) });
    return made;
  };

  // A figure as people of the shop's place write it: 12.50 or 12,50.
  const point = new Intl.NumberFormat(locale).formatToParts(1.5).find((each) => each.type === "decimal").value;
  const read = (text) => {
    const plain = text.trim().replace(/\s/g, "").replace(point, ".").replace(",", ".");
    return /^\d+(\.\d*)?$|^\.\d+$/.test(plain) ? Number(plain) : null;
  };

  let speaking = 0;
  let gifts = makeable;
  const show = (until) => {
    list.replaceChildren(...gifts.slice(0, until).map(gift));
    moreGifts.hidden = until >= gifts.length;
    moreGifts.dataset.next = String(until + GIFTS_AT_ONCE);
  };
  const filter = () => {
    const limit = read(input.value);
    const typed = Boolean(input.value.trim());
    input.setAttribute("aria-invalid", String(typed && limit === null));
    gifts = limit === null ? makeable : makeable.filter((row) => row[AT.paid] !== null && row[AT.paid] <= limit);
    show(GIFTS_AT_ONCE);
    nothing.hidden = gifts.length > 0;
    const sentence = typed && limit === null
      ? say("no amount")
      : count(limit === null ? "projects" : "projects of", gifts.length, { all: figure(makeable.length) });
    counted.textContent = sentence;
    clearTimeout(speaking);
    speaking = setTimeout(() => { giftsSaid.textContent = sentence; }, 400);
  };
  input.addEventListener("input", filter);
  form.addEventListener("submit", (event) => event.preventDefault());
  moreGifts.addEventListener("click", () => show(Number(moreGifts.dataset.next)));
  if (makeable.length > list.childElementCount) {
    moreGifts.hidden = false;
    moreGifts.dataset.next = String(list.childElementCount + GIFTS_AT_ONCE);
  }
  if (input.value) filter();
})();
