// Pictures that move while one types: a probe's log, and a plan's rows. Python worked the numbers out.

const clock = minutes => `${String(Math.floor(minutes / 60) % 24).padStart(2, "0")}:${String(Math.round(minutes % 60)).padStart(2, "0")}`;
const made = (tag, name, text = "") => Object.assign(document.createElement(tag), { className: name, textContent: text });

export function drawLog(figure, [times, cores]) {
  figure.hidden = times.length < 2;
  if (figure.hidden) return;
  const [low, high] = [Math.min(...cores), Math.max(...cores)];
  const [from, to] = [Math.min(...times), Math.max(...times)];
  const across = time => 52 + 300 * (time - from) / (to - from || 1);
  const up = core => 170 - 150 * (core - low) / (high - low || 1);
  const points = times.map((time, place) => [across(time).toFixed(1), up(cores[place]).toFixed(1)]);
  figure.innerHTML = `<svg viewBox="0 0 370 205" role="img" aria-label="Your log: from ${low.toFixed(1)} °C to ${high.toFixed(1)} °C in ${(to - from).toFixed(0)} minutes">
<path d="M52 15V170H360"/><polyline points="${points.map(each => each.join()).join(" ")}"/>
${points.map(([x, y]) => `<circle cx="${x}" cy="${y}" r="4"/>`).join("")}
<text x="46" y="24" text-anchor="end">${high.toFixed(1)} °C</text><text x="46" y="172" text-anchor="end">${low.toFixed(1)} °C</text>
<text x="52" y="190">${from.toFixed(0)} min</text><text x="352" y="190" text-anchor="end">${to.toFixed(0)} min</text></svg>`;
}

export function fillTable(tasks, board) {
  for (const task of tasks) {
    const row = board.table[task.dataset.task];
    const words = [row.takes, row.who, row.needs, row.after && `after: ${row.after}`,
      row.rests && `rests ${row.rests}`, row["may wait"] && `may wait ${row["may wait"]}`];
    task.querySelector("p").textContent = words.filter(Boolean).join(" · ");
  }
}

export function drawBoard(figure, list, board) {
  const ends = board.rows.flatMap(row => row.pieces.flatMap(piece => [piece[1], piece[2]]));
  const from = Math.min(board.opens, ...ends), to = Math.max(board.serve, ...ends);
  const place = minutes => 100 * (minutes - from) / (to - from);
  figure.replaceChildren();
  for (const row of board.rows) {
    const track = made("div", "row");
    for (const [name, begin, end, clash] of row.pieces) {
      const piece = made("div", clash ? "piece clash" : "piece", name);
      piece.title = `${clock(begin)} to ${clock(end)} ${name}`;
      Object.assign(piece.style, { left: `${place(begin)}%`, width: `${place(end) - place(begin)}%` });
      track.append(piece);
    }
    figure.append(made("p", "name", row.name), track);
  }
  const hours = made("div", "hours");
  for (let hour = Math.ceil(from / 60); hour * 60 <= to; hour++) {
    const mark = made("span", "", clock(hour * 60));
    mark.style.left = `${Math.min(95, Math.max(5, place(hour * 60)))}%`;
    hours.append(mark);
  }
  figure.append(hours, made("p", "quiet", `The service is at ${board.serve_at}.`));
  list.replaceChildren(...board.clashes.map(sentence => made("li", "", sentence)));
}
