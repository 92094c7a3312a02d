// The first page: find a reel, drop its result, see the verdict with its reasons, take the certificate.

import { byId, element, freshSession, getJson, may, notice, path, requireSession, signInAddress, svg, time } from './page.js';
import { MARKS } from './marks.js';

const state = { who: null, reel: null, record: null, hits: [], selected: -1, shown: 0 };

// The trade's word first, then plain English.
const WORDS = {
  'conductor-resistance': ['Conductor resistance', 'direct-current resistance of each wire'],
  'resistance-unbalance': ['Resistance unbalance', 'difference between the two wires of a pair'],
  'resistance-unbalance-between-pairs': ['Resistance unbalance between pairs', 'difference between two pairs'],
  'mutual-capacitance': ['Mutual capacitance', 'capacitance between the wires of a pair'],
  'capacitance-unbalance-pair-to-pair': ['Capacitance unbalance, pair to pair', 'how unevenly two pairs couple'],
  'capacitance-unbalance-to-ground': ['Capacitance unbalance, pair to ground', 'how unevenly a pair couples to ground'],
  'insertion-loss': ['Insertion loss', 'signal lost along the cable'],
  'next': ['NEXT', 'crosstalk heard at the sending end'],
  'ps-next': ['PS NEXT', 'crosstalk at the sending end from all other pairs together'],
  'acr-f': ['ACR-F', 'crosstalk at the far end against the signal'],
  'ps-acr-f': ['PS ACR-F', 'crosstalk at the far end from all other pairs together'],
  'fext': ['FEXT', 'crosstalk at the far end'],
  'return-loss': ['Return loss', 'how little is reflected to the sender'],
  'tcl': ['TCL', 'balance of a pair at the sending end'],
  'el-tctl': ['EL TCTL', 'balance of a pair at the far end'],
  'propagation-delay': ['Propagation delay', 'time a signal takes along the cable'],
  'delay-skew': ['Delay skew', 'difference between the fastest and the slowest pair'],
  'insulation-resistance': ['Insulation resistance', 'how well the insulation insulates'],
  'dielectric-withstand': ['Dielectric withstand', 'breakdowns under high voltage'],
  'spark-faults': ['Spark faults', 'insulation faults found while running'],
  'conductor-elongation': ['Conductor elongation', 'stretch of the wire before it breaks'],
  'insulation-tensile-strength': ['Insulation tensile strength', 'stress at which the insulation breaks'],
  'insulation-elongation': ['Insulation elongation', 'stretch of the insulation before it breaks'],
  'insulation-compression': ['Insulation compression', 'force that crushes the insulation'],
  'strip-force': ['Strip force', 'force that strips the insulation'],
  'jacket-thickness': ['Jacket thickness', ''],
  'jacket-tensile-strength': ['Jacket tensile strength', 'stress at which the jacket breaks'],
  'jacket-elongation': ['Jacket elongation', 'stretch of the jacket before it breaks'],
  'overall-diameter': ['Overall diameter', ''],
};
const STATISTICS = {
  'mean': 'average', 'rms': 'root mean square', 'rms-deviation': 'root mean square deviation',
  'mean-minus-sigma': 'mean less one standard deviation',
};
const LINE_COLOURS = ['#005f9e', '#c2570c', '#00795a', '#7a3b8f', '#8a6d00', '#3f4c57'];
const VERDICT_LINES = {
  accepted: 'Every requirement was measured and passes. The reel may be shipped.',
  rejected: 'At least one requirement fails. Do not ship this reel.',
  incomplete: 'Nothing fails, but not everything was tested. Do not ship this reel yet.',
};

// ---- figures in words

function name(finding) {
  const [word] = WORDS[finding.property] || [finding.property];
  const rest = finding.requirement && finding.requirement.startsWith(finding.property + '-')
    ? finding.requirement.slice(finding.property.length + 1) : '';
  return rest ? `${word}, ${STATISTICS[rest] || rest.replaceAll('-', ' ')}` : word;
}

const plain = (finding) => (WORDS[finding.property] || ['', ''])[1];

function decimals(value) {
  const size = Math.abs(value);
  return size >= 1000 ? 0 : size >= 100 ? 1 : size >= 1 ? 2 : 3;
}

function figure(value, places) {
  return value === null || value === undefined ? '' : value.toFixed(places).replace('-', '−');
}

// Figures are shown coarse, but never so coarse that a fail reads as a pass.
function places(finding) {
  if (Number.isInteger(finding.value) && Number.isInteger(finding.limit)) return 0;
  let count = decimals(finding.limit);
  while (count < 9 && finding.margin !== 0 && Number(finding.margin.toFixed(count)) === 0) count++;
  return count;
}

function where(finding) {
  const parts = [];
  if (finding.pair) parts.push(finding.partner ? `pairs ${finding.pair} and ${finding.partner}` : `pair ${finding.pair}`);
  if (finding.conductor) parts.push(`wire ${finding.conductor}`);
  if (finding.end) parts.push(`${finding.end} end`);
  if (finding.sample) parts.push(`sample ${finding.sample}`);
  if (finding.frequency) parts.push(`${Number(finding.frequency.value.toPrecision(6))} ${finding.frequency.unit}`);
  return parts.join(', ') || 'reel';
}

function sign(finding) {
  if (finding.sense === 'at-most') return 'at most';
  if (finding.sense === 'at-least') return 'at least';
  return finding.judged > finding.limit === finding.margin < 0 ? 'at most' : 'at least';
}

function sentence(finding) {
  if (finding.outcome === 'not-tested') return `not tested: ${finding.reason}`;
  const digits = places(finding);
  const unit = finding.unit === 'count' ? '' : ' ' + finding.unit;
  return `${figure(finding.judged, digits)}${unit} at ${where(finding)}; the limit is ${sign(finding)} ${figure(finding.limit, digits)}${unit}`
    + `, missed by ${figure(Math.abs(finding.margin), digits)}${unit}`;
}

const HIGH_VOLTAGE = new Set(['dielectric-withstand', 'spark-faults']);

function nextStep(record) {
  const failing = record.findings.filter((finding) => finding.outcome === 'fail');
  if (failing.length) {
    const faults = failing.some((finding) => HIGH_VOLTAGE.has(finding.property));
    return 'Next: mark the reel as held and hand it over to the engineer. Check leads and fixture and test again if the figure looks '
      + 'wrong; a new test is a new attempt and the old one stays.'
      + (faults ? ' High voltage: isolate and discharge before you touch the cable; local codes and licensed practice rule.' : '')
      + ' Whether to cut back is the engineer’s call.';
  }
  const open = record.findings.filter((finding) => finding.outcome === 'not-tested');
  if (open.some((finding) => finding.reason.startsWith('equipment out of calibration'))) {
    return 'Next: use equipment whose calibration holds and test again.';
  }
  if (open.some((finding) => finding.reason.startsWith('temperature'))) {
    return 'Next: let the reel reach the temperature that the limit asks for and test again.';
  }
  return open.length ? 'Next: measure what is missing and send the whole result again.' : '';
}

// ---- search

let searchTimer;
let searchNumber = 0;

function showHits(hits) {
  state.hits = hits;
  state.selected = hits.length ? 0 : -1;
  const list = byId('hits');
  list.replaceChildren(...hits.map((hit, index) => element('li',
    { role: 'option', id: 'hit-' + index, 'aria-selected': String(index === state.selected),
      onmousedown: (event) => { event.preventDefault(); choose(hit.reel); } },
    element('strong', {}, hit.reel),
    element('span', { class: 'what' }, [hit.product, hit.order, hit.customer].filter(Boolean).join(' · ')),
    hit.verdict ? element('span', { class: 'what' }, hit.verdict) : null)));
  list.hidden = hits.length === 0;
  byId('query').setAttribute('aria-expanded', String(hits.length > 0));
  select(state.selected);
}

function select(index) {
  state.selected = index;
  [...byId('hits').children].forEach((item, at) => item.setAttribute('aria-selected', String(at === index)));
  if (index >= 0) {
    byId('query').setAttribute('aria-activedescendant', 'hit-' + index);
    byId('hits').children[index].scrollIntoView({ block: 'nearest' });
  } else {
    byId('query').removeAttribute('aria-activedescendant');
  }
}

async function find(text) {
  const number = ++searchNumber;
  const { reels } = await getJson(`/api/v1/reels?limit=12&query=${encodeURIComponent(text)}`);
  return number === searchNumber ? reels : null;
}

function choose(reel) {
  showHits([]);
  byId('query').value = '';
  if (location.hash === '#/reel/' + encodeURIComponent(reel)) openReel(reel);
  else location.hash = '#/reel/' + encodeURIComponent(reel);
}

byId('query').addEventListener('input', () => {
  clearTimeout(searchTimer);
  const text = byId('query').value.trim();
  if (!text) { showHits([]); return; }
  searchTimer = setTimeout(() => find(text).then((reels) => { if (reels) showHits(reels); }).catch((e) => notice(e.message)), 150);
});

byId('query').addEventListener('keydown', (event) => {
  if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    if (!state.hits.length) return;
    event.preventDefault();
    const step = event.key === 'ArrowDown' ? 1 : -1;
    state.moved = true;
    select((state.selected + step + state.hits.length) % state.hits.length);
  } else if (event.key === 'Escape') {
    showHits([]);
  }
});

byId('search').addEventListener('submit', async (event) => {
  event.preventDefault();
  clearTimeout(searchTimer);
  notice('');
  const text = byId('query').value.trim();
  if (!text) return;
  if (state.moved && state.selected >= 0) {
    state.moved = false;
    choose(state.hits[state.selected].reel);
    return;
  }
  try {
    const reels = (await find(text)) || state.hits;
    const exact = reels.find((reel) => reel.reel.toLowerCase() === text.toLowerCase());
    if (exact) choose(exact.reel);
    else if (reels.length === 1) choose(reels[0].reel);
    else if (reels.length) showHits(reels);
    else {
      showHits([]);
      notice(`No reel, order or customer matches “${text}”. Check the number, or register the reel first.`);
      byId('query').select();
    }
  } catch (e) {
    notice(e.message);
  }
});

document.addEventListener('click', (event) => { if (!byId('search').contains(event.target)) showHits([]); });

// ---- start view

async function showStart() {
  document.title = 'Reelproof';
  byId('reel').hidden = true;
  byId('start').hidden = false;
  state.reel = null;
  const { reels } = await getJson('/api/v1/reels?limit=20&query=');
  byId('recent').replaceChildren(...reels.map((reel) => element('tr', {},
    element('td', {}, element('a', { href: '#/reel/' + encodeURIComponent(reel.reel) }, reel.reel)),
    element('td', {}, reel.product || ''), element('td', {}, reel.order || ''), element('td', {}, reel.customer || ''),
    element('td', {}, time(reel.tested)),
    element('td', { class: 'tag ' + (reel.verdict || '') }, reel.verdict || 'not tested'))));
}

// ---- a reel

async function openReel(number) {
  notice('');
  byId('faults').hidden = true;
  byId('upload-state').textContent = '';
  try {
    const reel = await getJson(path('reels', number));
    state.reel = reel;
    document.title = reel.reel + ' · Reelproof';
    byId('start').hidden = true;
    byId('reel').hidden = false;
    byId('reel-number').textContent = 'Reel ' + reel.reel;
    byId('reel-facts').replaceChildren(...[['Product', reel.product], ['Length', reel.length && `${reel.length.value} ${reel.length.unit}`],
      ['Order', reel.order], ['Customer', reel.customer], ['Plant', reel.plant]]
      .filter(([, value]) => value)
      .map(([label, value]) => element('div', {}, element('dt', {}, label), element('dd', {}, value))));
    showRecord(reel.records[0] || null);
  } catch (e) {
    await showStart().catch(() => {});
    notice(e.status === 404 ? `Reel ${number} is not known here. Check the number, or register the reel first.` : e.message);
    byId('query').focus();
  }
}

function showRecord(record) {
  state.record = record;
  const number = ++state.shown;
  byId('record').hidden = !record;
  byId('untested').hidden = Boolean(record);
  if (!record) return;
  byId('verdict').className = 'verdict ' + record.verdict;
  byId('verdict-mark').replaceChildren(...MARKS[record.verdict].map(([tag, attributes]) => svg(tag, attributes)));
  byId('verdict-word').textContent = record.verdict.toUpperCase();
  byId('verdict-line').replaceChildren(VERDICT_LINES[record.verdict],
    ` Attempt ${record.attempt}, tested `, time(record.finished) || 'at an unknown time',
    `, by ${record.limitSet.id} revision ${record.limitSet.revision}.`);
  byId('warnings').hidden = !(record.warnings || []).length;
  byId('warnings').replaceChildren(...(record.warnings || []).map((warning) => element('li', {}, warning)));
  showReasons(record);
  showAttempts(record);
  byId('requirements').replaceChildren(...record.findings.map(row));
  showCertificate(record);
  showPlots(record, number);
}

function showReasons(record) {
  const order = { fail: 0, 'not-tested': 1 };
  const reasons = record.findings.filter((finding) => finding.outcome !== 'pass')
    .sort((one, other) => order[one.outcome] - order[other.outcome]);
  byId('reasons-section').hidden = reasons.length === 0;
  byId('reasons').replaceChildren(...reasons.map((finding) => element('li', { class: finding.outcome },
    element('strong', {}, name(finding)), element('span', { class: 'plain' }, plain(finding) ? ` (${plain(finding)}) ` : ' '),
    sentence(finding))));
  byId('next-step').textContent = nextStep(record);
}

function showAttempts(record) {
  const records = state.reel.records;
  byId('attempt-label').hidden = records.length < 2;
  byId('attempt').replaceChildren(...records.map((one, index) => {
    const option = element('option', { value: String(index) }, `${one.attempt}: ${one.verdict}`);
    option.selected = one.id === record.id;
    return option;
  }));
}

byId('attempt').addEventListener('change', () => showRecord(state.reel.records[Number(byId('attempt').value)]));

function row(finding) {
  const digits = finding.value === null ? 0 : places(finding);
  const note = finding.outcome === 'not-tested' || finding.reason ? finding.reason : plain(finding);
  const unit = finding.unit === 'count' ? '' : finding.unit || '';
  return element('tr', { class: finding.outcome, tabindex: '0',
    onclick: () => explain(finding),
    onkeydown: (event) => { if (event.key === 'Enter' || event.key === ' ') { event.preventDefault(); explain(finding); } } },
  element('td', {}, element('strong', {}, name(finding)), element('small', {}, note + (finding.derived && finding.requirement === finding.property ? ' · computed from its parts' : ''))),
  element('td', { class: 'n' }, figure(finding.judged, digits)), element('td', { class: 'n' }, figure(finding.limit, digits)),
  element('td', { class: 'n' }, figure(finding.margin, digits)), element('td', { class: 'u' }, unit),
  element('td', {}, finding.value === null ? '' : where(finding)), element('td', { class: 'n points' }, String(finding.points)),
  element('td', { class: 'tag ' + finding.outcome }, { pass: '✓ pass', fail: '✕ fail', 'not-tested': '– not tested' }[finding.outcome]));
}

async function explain(finding) {
  try {
    const found = await getJson(path('records', state.record.id, 'findings', finding.requirement || finding.property));
    byId('explain-title').textContent = `${name(finding)}: where the figure comes from`;
    byId('explain-steps').replaceChildren(...(found.explanation || []).map((step) => element('li', {},
      element('span', { class: 'title' }, step.title), element('span', { class: 'detail' }, step.detail),
      element('span', { class: 'n' }, `${Number(step.value.toPrecision(9))} ${step.unit}`),
      step.source ? element('span', { class: 'source' }, 'Source: ' + step.source) : null)));
    if (!(found.explanation || []).length) {
      byId('explain-steps').replaceChildren(element('li', {}, found.reason || 'Nothing was judged.'));
    }
    byId('explain').showModal();
  } catch (e) {
    notice(e.message);
  }
}

// ---- certificate

function showCertificate(record) {
  const box = byId('certificate');
  const newest = state.reel.records[0].id === record.id;
  const issued = (state.reel.certificates || []).find((certificate) => certificate.record === record.id);
  if (record.verdict !== 'accepted' || !newest) { box.replaceChildren(); return; }
  if (issued) { box.replaceChildren(certificateLink(issued)); return; }
  box.replaceChildren(may(state.who, 'issue') ? element('button', { type: 'button', id: 'issue', onclick: issue }, 'Issue certificate')
    : element('p', {}, 'No certificate yet. Customer service or the quality manager issues it.'));
}

const certificateLink = (certificate) =>
  element('a', { href: certificate.pdf, id: 'certificate-link', download: certificate.number + '.pdf' }, 'Certificate ' + certificate.number);

async function issue() {
  byId('issue').disabled = true;
  try {
    const certificate = await getJson(path('reels', state.reel.reel, 'certificates'), { method: 'POST' });
    byId('certificate').replaceChildren(certificateLink(certificate));
    byId('certificate-link').focus();
  } catch (e) {
    byId('certificate').replaceChildren(element('p', { role: 'alert' }, e.message));
  }
}

// ---- upload

byId('files').addEventListener('change', () => { send([...byId('files').files]); byId('files').value = ''; });
for (const kind of ['dragenter', 'dragover']) {
  document.addEventListener(kind, (event) => {
    event.preventDefault();
    if (state.reel && may(state.who, 'upload')) document.body.classList.add('dragging');
  });
}
document.addEventListener('dragleave', (event) => { if (!event.relatedTarget) document.body.classList.remove('dragging'); });
document.addEventListener('drop', (event) => {
  event.preventDefault();
  document.body.classList.remove('dragging');
  if (!may(state.who, 'upload')) notice(NO_UPLOAD);
  else if (state.reel) send([...event.dataTransfer.files]);
  else notice('Open the reel first, then drop its result file.');
});

const NO_UPLOAD = 'Your roles may read results, not send them. Technicians, engineers and quality managers send them.';

async function send(files) {
  if (!files.length || !state.reel) return;
  const documents = files.filter((file) => file.name.toLowerCase().endsWith('.json'));
  byId('faults').hidden = true;
  if (documents.length !== 1) {
    showFaults({ title: 'Which file is the result?', detail: 'Give one JSON document, with any number of CSV files beside it.' });
    return;
  }
  const reel = state.reel.reel;
  // Signed out meanwhile: the service's own 401 says so.
  const who = await freshSession().catch(() => null);
  const request = new XMLHttpRequest();
  request.open('POST', path('reels', reel, 'tests'));
  request.setRequestHeader('Accept', 'application/json');
  if (who && who.csrf) request.setRequestHeader('X-CSRF-Token', who.csrf);
  let body;
  if (files.length === 1) {
    body = documents[0];
    request.setRequestHeader('Content-Type', 'application/json');
  } else {
    body = new FormData();
    body.append('result', new Blob([documents[0]], { type: 'application/json' }), documents[0].name);
    files.filter((file) => file !== documents[0])
      .forEach((file) => body.append(file.name, new Blob([file], { type: 'text/csv' }), file.name));
  }
  byId('progress').hidden = false;
  byId('progress').value = 0;
  byId('upload-state').textContent = 'Sending…';
  request.upload.onprogress = (event) => {
    if (event.lengthComputable) byId('progress').value = 100 * event.loaded / event.total;
    if (event.loaded === event.total) byId('upload-state').textContent = 'Judging…';
  };
  request.onerror = () => done({ title: 'Not sent', detail: 'The service did not answer. The file was not taken; send it again.' });
  request.onload = async () => {
    let answer = {};
    try { answer = JSON.parse(request.responseText); } catch { answer = { title: `The service answered ${request.status}.` }; }
    if (request.status === 200 || request.status === 201) {
      done(null);
      if (state.reel && state.reel.reel === reel) {
        await openReel(reel);
        byId('upload-state').textContent = request.status === 200
          ? 'This very file was taken before; its record is shown.' : 'Taken and judged.';
        byId('verdict').scrollIntoView({ block: 'nearest' });
        byId('query').focus({ preventScroll: true });
      }
    } else if (request.status === 401) {
      done({ title: 'you are signed out', detail: 'The file was not taken. Sign in again, then drop it again.', signIn: true });
    } else {
      done(answer);
    }
  };
  const done = (problem) => {
    byId('progress').hidden = true;
    byId('upload-state').textContent = '';
    if (problem) showFaults(problem);
  };
  request.send(body);
}

function showFaults(problem) {
  const box = byId('faults');
  box.replaceChildren(element('h2', {}, 'Not taken: ' + (problem.title || 'the file has a fault')),
    element('p', {}, problem.detail || ''),
    problem.signIn ? element('p', {}, element('a', { href: signInAddress() }, 'Sign in')) : '',
    element('ul', {}, ...(problem.errors || []).map((fault) => element('li', {}, element('code', {}, fault.where || ''), ' ', fault.message))));
  box.hidden = false;
  box.scrollIntoView({ block: 'nearest' });
}

// ---- plots

async function showPlots(record, number) {
  byId('plots').replaceChildren();
  const seen = new Set();
  const drawn = record.findings.filter((finding) => {
    const fresh = finding.frequency && !seen.has(finding.property);
    if (fresh) seen.add(finding.property);
    return fresh;
  });
  byId('plots-section').hidden = true;
  for (const finding of drawn) {
    let sweeps;
    try {
      sweeps = await getJson(path('records', record.id, 'sweeps', finding.property));
    } catch (e) {
      if (number === state.shown) notice(e.message);
      return;
    }
    if (number !== state.shown) return;
    if (sweeps.sweeps.some((sweep) => sweep.frequencies.length > 1)) {
      byId('plots-section').hidden = false;
      plot(finding, sweeps);
    }
  }
}

const LINE_DASHES = [[], [6, 3], [2, 3], [9, 3, 2, 3]];

function plot(finding, data) {
  const box = element('article', { class: 'plot ' + finding.outcome },
    element('h3', {}, (WORDS[data.property] || [data.property])[0] + ', ' + data.unit),
    element('p', {}, `least margin ${figure(finding.margin, places(finding))} ${finding.unit}: ${where(finding)}`));
  const target = element('div');
  box.append(target);
  byId('plots').append(box);
  // One axis for all: the union of every sweep's frequencies and the limit's; a gap joins its neighbours.
  const frequencies = [...new Set([...data.sweeps.flatMap((sweep) => sweep.frequencies), ...data.limit.frequencies])].sort((a, b) => a - b);
  const place = new Map(frequencies.map((frequency, index) => [frequency, index]));
  const spread = (at, values) => {
    const column = new Array(frequencies.length).fill(undefined);
    at.forEach((frequency, index) => { column[place.get(frequency)] = values[index]; });
    return column;
  };
  const series = [{}];
  const columns = [frequencies];
  const key = [];
  const many = data.sweeps.length > 12;
  data.sweeps.forEach((sweep, index) => {
    const stroke = LINE_COLOURS[(sweep.pair ? sweep.pair - 1 : index) % LINE_COLOURS.length];
    const dash = LINE_DASHES[(sweep.partner ? sweep.partner - 1 : sweep.end === 'far' ? 1 : 0) % LINE_DASHES.length];
    const label = [sweep.partner ? `${sweep.pair}-${sweep.partner}` : sweep.pair ? `pair ${sweep.pair}` : 'reel', sweep.end === 'far' ? 'far' : '']
      .filter(Boolean).join(' ');
    series.push({ label, stroke, dash, width: many ? 0.8 : 1.2, spanGaps: true, points: { show: false } });
    columns.push(spread(sweep.frequencies, sweep.corrected));
    if (!many) key.push([label, stroke, dash]);
  });
  for (const bound of [data.limit.upper, data.limit.lower]) {
    if (bound) {
      series.push({ label: 'limit', stroke: '#15202b', width: 3, spanGaps: true, points: { show: false } });
      columns.push(spread(data.limit.frequencies, bound));
    }
  }
  const ring = (chart) => {
    if (!finding.frequency) return;
    const x = chart.valToPos(finding.frequency.value, 'x', true);
    const y = chart.valToPos(finding.value, 'y', true);
    chart.ctx.save();
    chart.ctx.lineWidth = 2 * devicePixelRatio;
    chart.ctx.strokeStyle = finding.outcome === 'fail' ? '#a3180f' : '#15202b';
    chart.ctx.beginPath();
    chart.ctx.arc(x, y, 7 * devicePixelRatio, 0, 2 * Math.PI);
    chart.ctx.stroke();
    chart.ctx.restore();
  };
  new uPlot({
    width: Math.max(300, box.clientWidth - 24), height: 250, legend: { show: false }, cursor: { drag: { x: false, y: false } },
    scales: { x: { time: false, distr: 3, range: [frequencies[0], frequencies[frequencies.length - 1]] } },
    axes: [{ values: (chart, ticks) => ticks.map((tick) => (tick === null ? '' : /^[125]/.test(String(Number(tick.toPrecision(1)))) ? String(tick) : '')), size: 34 },
      { size: 46, values: (chart, ticks) => ticks.map((tick) => String(tick).replace('-', '−')) }],
    series, hooks: { draw: [ring] },
  }, columns, target);
  box.append(element('ul', { class: 'key' }, ...[...key, ['limit', '#15202b', [], 3]].map(([label, stroke, dash, width]) => {
    const line = svg('svg', { width: 26, height: 8, 'aria-hidden': 'true' });
    line.append(svg('line', { x1: 0, y1: 4, x2: 26, y2: 4, stroke, 'stroke-width': width || 1.6, 'stroke-dasharray': dash.join(' ') }));
    return element('li', {}, line, label);
  }), many ? element('li', {}, `${data.sweeps.length} sweeps`) : null, element('li', {}, 'frequency in MHz')));
}

// ---- routes

async function route() {
  const match = location.hash.match(/^#\/reel\/(.+)$/);
  try {
    if (match) await openReel(decodeURIComponent(match[1]));
    else await showStart();
  } catch (e) {
    notice(e.message);
  }
  byId('query').focus({ preventScroll: true });
}

getJson('/api/v1/status').then((status) => {
  byId('plant').textContent = `Plant ${status.plant}${status.demo ? ' · demo, all data invented' : ''}`;
}).catch(() => {});

async function start() {
  state.who = await requireSession();
  byId('upload').hidden = !may(state.who, 'upload');
  byId('untested').textContent = 'This reel has not been tested yet.' + (may(state.who, 'upload') ? ' Drop its result file on this page.' : '');
  byId('how').textContent = 'Type or scan a reel number above and press Enter.'
    + (may(state.who, 'upload') ? ' Then drop its result file on this page.' : '');
  window.addEventListener('hashchange', route);
  await route();
}

start().catch((e) => notice(e.message));
