(() => {
  "use strict";
  const byId = (id) => document.getElementById(id);
  const data = JSON.parse(byId("data").textContent);
  const [wide, high] = [1000, 400];
  const stepper = byId("step"), timer = byId("day");
  const plots = [...document.querySelectorAll(".plot")];
  document.documentElement.classList.add("js");

  const across = (day) => (wide * (day - data.first)) / (data.last - data.first);
  const up = (panel, value) => (high * (panel.high - value)) / (panel.high - panel.low);
  const path = (panel, days, values) =>
    values.map((v, i) => (i ? "L" : "M") + across(days[i]).toFixed(1) + " " + up(panel, v).toFixed(1)).join("");

  // straight between two points, and after what happens at one
  const valueAt = (step, trace, day) => {
    const { days, curves } = data.steps[step], values = curves[trace];
    let after = days.findIndex((d) => d > day);
    if (after < 0) after = days.length;
    if (after === 0) return null;
    if (after === days.length) return values[after - 1];
    const share = (day - days[after - 1]) / (days[after] - days[after - 1]);
    return values[after - 1] + share * (values[after] - values[after - 1]);
  };
  const worded = (value, trace) =>
    value === null ? "–" : value.toFixed(data.traces[trace].digits).replace(/^-(?=.*[1-9])/, "−").replace(/^-/, "");
  const clock = (hours) => String(Math.floor(hours)).padStart(2, "0") + ":" + String(Math.floor((hours % 1) * 60)).padStart(2, "0");
  const when = (day) => {
    const whole = Math.floor(day + 1e-9);
    return "day " + whole + (data.hours ? ", " + clock((day - whole) * 24 + 1e-6) : "");
  };
  const chosenDay = () => (data.hours ? data.first + timer.value / 24 : Number(timer.value));

  const put = (plot, name, day) => {
    const step = Number(stepper.value), key = name === "here" ? step : data.base;
    for (const cell of plot.querySelectorAll("[data-" + name + "]")) {
      const trace = Number(cell.dataset[name]);
      cell.textContent = worded(valueAt(key, trace, day), trace);
    }
  };
  const read = (day) => {
    for (const plot of plots) {
      plot.querySelector("[data-cursor]").setAttribute("d", "M" + across(day).toFixed(1) + " 0V" + high);
      put(plot, "here", day);
      put(plot, "base", day);
    }
    byId("day-words").textContent = when(day);
  };
  const sayReading = () => {
    const step = Number(stepper.value), day = chosenDay();
    const told = (key) =>
      data.traces.map((t, i) => t.name + " " + worded(valueAt(key, i, day), i) + (t.unit ? " " + t.unit : "")).join(", ");
    const words = when(day)[0].toUpperCase() + when(day).slice(1) + ", " + data.steps[step].label + ": " + told(step) + ".";
    byId("reading").textContent = words;
    timer.setAttribute("aria-valuetext", when(day));
  };

  const drawNotes = (plot, place, step) => {
    const own = step.marks.map((mark, i) => [mark, i + 1]).filter(([mark]) => mark[0] === place);
    plot.querySelector("[data-marks]").replaceChildren(...own.map(([mark, number]) => {
      const span = document.createElement("span");
      span.className = "mark";
      span.style.left = mark[1] + "%";
      span.style.top = mark[2] + "%";
      span.textContent = number;
      return span;
    }));
    plot.querySelector("[data-leaders]").setAttribute("d", own.map(([mark]) => mark[4]).join(""));
    const list = plot.querySelector("[data-notes]");
    if (own.length) list.start = own[0][1];
    list.replaceChildren(...own.map(([mark]) => {
      const item = document.createElement("li");
      item.textContent = mark[3];
      return item;
    }));
  };
  const show = () => {
    const at = Number(stepper.value), step = data.steps[at];
    document.documentElement.toggleAttribute("data-at-base", at === data.base);
    plots.forEach((plot, place) => {
      const panel = data.panels[place];
      for (const trace of panel.traces)
        plot.querySelector('[data-curve="' + trace + '"]').setAttribute("d", path(panel, step.days, step.curves[trace]));
      plot.querySelector("[data-changes]").setAttribute("d", step.changes.map((d) => "M" + across(d).toFixed(1) + " 0V" + high).join(""));
      plot.querySelector("desc").textContent = step.described[place];
      drawNotes(plot, place, step);
    });
    byId("step-words").textContent = step.label;
    byId("print-step").textContent = step.label;
    stepper.setAttribute("aria-valuetext", step.label);
    byId("headline").textContent = step.headline;
    byId("sentences").replaceChildren(...step.sentences.map((words) => {
      const item = document.createElement("li");
      item.textContent = words;
      return item;
    }));
    document.querySelectorAll("tbody tr").forEach((row, i) => row.classList.toggle("shown", i === at));
    read(chosenDay());
    sayReading();
  };

  stepper.addEventListener("input", show);
  timer.addEventListener("input", () => { read(chosenDay()); sayReading(); });
  const dayAt = (event) => {
    const box = event.currentTarget.getBoundingClientRect();
    const share = Math.min(1, Math.max(0, (event.clientX - box.left) / box.width));
    return data.first + share * (data.last - data.first);
  };
  for (const canvas of document.querySelectorAll(".canvas")) {
    canvas.addEventListener("pointermove", (event) => read(dayAt(event)));
    canvas.addEventListener("pointerleave", () => read(chosenDay()));
    canvas.addEventListener("click", (event) => {
      const day = dayAt(event);
      timer.value = Math.round(data.hours ? (day - data.first) * 24 : day);
      read(chosenDay());
      sayReading();
    });
  }
  show();
})();
