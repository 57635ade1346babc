// The press card: steps to tick, and a countdown that outlives a locked screen and a closed page.
(() => {
  "use strict";
  const { say, count } = window.sentences;
  const part = (id) => document.getElementById(id);
  const [card, timer, left, said, presses, start, stop, again, print] =
    ["content", "timer", "left", "said", "presses", "start", "stop", "again", "print"].map(part);
  const ticks = [...document.querySelectorAll("#steps input")];
  const title = document.title;

  // What is remembered: { ticks: [true, …], pressed: 2, run: { until: ms, seconds, press, counted } }
  const KEY = "press-card " + location.pathname;
  const kept = (() => {
    try {
      return JSON.parse(localStorage.getItem(KEY)) || {};
    } catch {
      return {};
    }
  })();
  const keep = () => {
    try {
      localStorage.setItem(KEY, JSON.stringify(kept));
    } catch {
      // Storage is full or forbidden: the card works, but forgets.
    }
  };

  // Steps.
  ticks.forEach((tick, index) => {
    tick.checked = Boolean(kept.ticks && kept.ticks[index]);
    tick.addEventListener("change", () => {
      kept.ticks = ticks.map((each) => each.checked);
      keep();
    });
  });

  if (print) print.addEventListener("click", () => window.print());

  // Sound: beeps are laid out ahead on the audio clock, which goes on while the page itself is put to sleep.
  const BEEPS = 90; // three at a time, every two seconds, for a minute
  const sound = { context: null, beeps: null, due: 0 };
  const hush = () => {
    if (!sound.beeps) return;
    try {
      sound.beeps.stop();
    } catch {
      // It has ended by itself.
    }
    sound.beeps = null;
  };
  const soundAt = (seconds) => {
    const Context = window.AudioContext || window.webkitAudioContext;
    if (!Context) return;
    try {
      sound.context ||= new Context();
      sound.context.resume();
      hush();
      const beeps = sound.context.createOscillator();
      const level = sound.context.createGain();
      beeps.type = "square";
      beeps.frequency.value = 880;
      level.gain.value = 0;
      sound.due = sound.context.currentTime + Math.max(0, seconds) + 0.02;
      for (let beep = 0; beep < BEEPS; beep += 1) {
        const at = sound.due + Math.floor(beep / 3) * 2 + (beep % 3) * 0.4;
        level.gain.setValueAtTime(0.3, at);
        level.gain.setValueAtTime(0, at + 0.25);
      }
      beeps.connect(level).connect(sound.context.destination);
      beeps.start();
      beeps.stop(sound.due + BEEPS);
      sound.beeps = beeps;
    } catch {
      // No sound on this device: what is seen must do.
    }
  };
  const soundNow = () => {
    const { context, beeps, due } = sound;
    if (beeps && context.state === "running" && due <= context.currentTime + 0.5) return; // it sounds already
    if (context) soundAt(0);
  };

  // The screen stays on while the time runs, where the browser can do that.
  let awake = null;
  const stayAwake = async () => {
    if (!navigator.wakeLock || document.hidden || awake) return;
    try {
      awake = await navigator.wakeLock.request("screen");
      awake.addEventListener("release", () => { awake = null; });
      if (!kept.run) awake.release();
    } catch {
      awake = null;
    }
  };
  const maySleep = () => { if (awake) awake.release(); };

  const clock = (seconds) => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
  const write = (where, words) => { if (where.textContent !== words) where.textContent = words; };
  const usual = Number(timer.dataset.seconds) || 0;
  let silent = false; // the page was opened while the time ran, and may make no sound before a tap
  let rang = false;
  let beat = 0;

  const state = (name) => {
    timer.dataset.state = name;
    document.documentElement.classList.toggle("time-up", name === "over");
    start.hidden = name !== "ready" && !(name === "over" && usual);
    stop.hidden = name === "ready";
    write(start, name === "over" ? say("next") : say("start", { clock: clock(usual) }));
    write(stop, say(name === "over" ? "done" : "stop"));
    const next = name === "over";
    start.classList.toggle("action", !next);
  };

  const tellPressings = () => {
    const number = kept.pressed || 0;
    write(presses, number ? count("timed", number) : "");
  };

  const look = () => {
    const run = kept.run;
    if (!run) {
      clearInterval(beat);
      beat = 0;
      if (usual) write(left, clock(usual));
      else timer.hidden = true;
      document.title = title;
      state("ready");
      tellPressings();
      return;
    }
    timer.hidden = false;
    const over = Date.now() - run.until;
    if (over < 0) {
      const seconds = Math.ceil(-over / 1000);
      write(left, clock(seconds));
      write(said, say(silent ? "silent" : run.press ? "pressing" : "pre-press"));
      document.title = `${clock(seconds)} – ${title}`;
      state("running");
      return;
    }
    const late = Math.floor(over / 1000);
    if (!run.counted) {
      run.counted = true;
      if (run.press) kept.pressed = (kept.pressed || 0) + 1;
      keep();
    }
    if (!rang) {
      rang = true;
      soundNow();
      try {
        if (navigator.vibrate) navigator.vibrate([600, 250, 600, 250, 600, 250, 1200]);
      } catch {
        // No vibration here.
      }
      write(said, late < 3 ? say("up") : say("was up", { clock: clock(late) }));
    }
    write(left, late < 1 ? "0:00" : `+${clock(late)}`);
    document.title = say(late < 1 ? "title" : "late title", { clock: clock(late), title });
    state("over");
    tellPressings();
  };
  const go = () => {
    if (!beat) beat = setInterval(look, 200);
    look();
  };

  const begin = (seconds, press) => {
    kept.run = { until: Date.now() + seconds * 1000, seconds, press, counted: false };
    keep();
    silent = false;
    rang = false;
    soundAt(seconds);
    stayAwake();
    go();
  };
  const end = () => {
    delete kept.run;
    keep();
    hush();
    try {
      if (navigator.vibrate) navigator.vibrate(0);
    } catch {
      // As above.
    }
    maySleep();
    write(said, "");
    look();
  };

  start.addEventListener("click", () => begin(usual, true));
  stop.addEventListener("click", end);
  for (const each of document.querySelectorAll(".step-timer")) {
    each.addEventListener("click", () => begin(Number(each.dataset.seconds), "press" in each.dataset));
  }
  again.addEventListener("click", () => {
    for (const tick of ticks) tick.checked = false;
    delete kept.ticks;
    delete kept.pressed;
    end();
    tellPressings();
  });

  // Woken up, come back to, opened again: what counts is the clock, not what was on the screen.
  const wake = () => {
    if (document.hidden || !kept.run) return;
    stayAwake();
    look();
  };
  document.addEventListener("visibilitychange", wake);
  window.addEventListener("pageshow", wake);
  window.addEventListener("focus", wake);
  window.addEventListener("storage", (event) => {
    if (event.key !== KEY) return;
    const fresh = JSON.parse(event.newValue) || {};
    for (const name of ["ticks", "pressed", "run"]) kept[name] = fresh[name];
    ticks.forEach((tick, index) => { tick.checked = Boolean(kept.ticks && kept.ticks[index]); });
    if (!kept.run) hush();
    go();
  });
  const touched = () => {
    if (!silent || !kept.run) return;
    silent = false;
    const seconds = (kept.run.until - Date.now()) / 1000;
    if (seconds > 0) soundAt(seconds);
    look();
  };
  for (const event of ["pointerdown", "keydown"]) document.addEventListener(event, touched);

  if (kept.run) {
    silent = true;
    stayAwake();
    go();
  } else {
    look();
  }
  card.dataset.ready = "yes";
})();
