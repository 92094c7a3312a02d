// The first page: find a reel, drop its result, see the verdict with its reasons, take the certificate.

import { byId, element, freshSession, getJson, may, notice, path, requireSession, signInAddress, svg, time } from './page.js';
import { MARKS } from './marks.js';

const state = { who: null, reel: null, record: null, hits: [], selected: -1, opened: 0, shown: 0 };

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
  'input-impedance': ['Input impedance', 'impedance that a pair shows at one end'],
  'tcl': ['TCL', 'balance of a pair at the sending end'],
  'tctl': ['TCTL', 'how little of a signal leaves the far end unbalanced'],
  'el-tctl': ['EL TCTL', 'balance of a pair at the far end'],
  'propagation-delay': ['Propagation delay', 'time a signal takes along the cable'],
  'group-delay': ['Group delay', 'time that a change of the signal takes along the cable'],
  'delay-skew': ['Delay skew', 'difference between the fastest and the slowest pair'],
  'insulation-resistance': ['Insulation resistance', 'how well the insulation insulates'],
  'dielectric-withstand': ['Dielectric withstand', 'breakdowns under high voltage'],
  'spark-faults': ['Spark faults', 'insulation faults found while running'],
  'conductor-elongation': ['Conductor elongation', 'stretch of the wire before it breaks'],
  'insulation-tensile-strength': ['Insulation tensile strength', 'stress at which the insulation breaks'],
  'insulation-elongation': ['Insulation elongation', 'stretch of the insulation before it breaks'],
  'insulation-compression': ['Insulation compression', 'force that crushes the insulation'],
  'strip-force': ['Strip force', 'force that strips the insulation'],
  'jacket-thickness': ['Jacket thickness', 'wall of the jacket'],
  'jacket-tensile-strength': ['Jacket tensile strength', 'stress at which the jacket breaks'],
  'jacket-elongation': ['Jacket elongation', 'stretch of the jacket before it breaks'],
  'overall-diameter': ['Overall diameter', 'diameter over the jacket'],
  'loop-resistance': ['Loop resistance', 'the two wires of a pair in a row'],
  'resistance-unbalance-direction': ['Direction of resistance unbalance', 'share of pairs in which wire a has more resistance than wire b'],
  'mutual-conductance': ['Mutual conductance', 'what the insulation between the wires of a pair lets through'],
  'insulation-faults': ['Insulation faults', 'bare or thin spots along the tested wires'],
  'continuity-faults': ['Grounds, crosses, shorts and opens', 'wires that are broken or touch what they must not'],
  'insulated-conductor-diameter': ['Insulated conductor diameter', 'diameter over the insulation of a wire'],
  'insulation-shrinkback': ['Insulation shrinkback', 'how far heated insulation draws back'],
  'insulation-cold-bend-failures': ['Insulation cold bend', 'insulation samples that cracked when bent cold'],
  'inner-jacket-thickness': ['Inner jacket thickness', 'wall of the inner jacket'],
  'inner-jacket-eccentricity': ['Inner jacket eccentricity', 'thickest less thinnest wall of the inner jacket'],
  'jacket-eccentricity': ['Jacket eccentricity', 'thickest less thinnest wall of the jacket'],
  'jacket-shrinkback': ['Jacket shrinkback', 'how far a heated jacket draws back'],
  'jacket-impact-failures': ['Jacket impact', 'jacket samples that split when struck cold'],
  'jacket-tensile-retention': ['Jacket tensile strength after ageing', 'strength left after the oven, of that before'],
  'jacket-elongation-retention': ['Jacket elongation after ageing', 'stretch left after the oven, of that before'],
  'shield-bond': ['Bond of jacket and shield', 'force that parts the jacket from the shield'],
  'breaking-strength': ['Breaking strength', 'pull at which the whole cable breaks'],
  'length-marking-error': ['Length marking', 'how much longer the cable is than its marking says'],
};
const STATISTICS = {
  'mean': 'average', 'rms': 'root mean square', 'rms-deviation': 'root mean square deviation',
  'mean-minus-sigma': 'mean less one standard deviation', 'maximum': 'greatest', 'percent-of-pairs': 'share of pairs',
};
const LINE_COLOURS = ['#005f9e', '#c2570c', '#00795a', '#7a3b8f', '#8a6d00', '#3f4c57'];
const VERDICT_LINES = {
  accepted: 'Every requirement was measured and passes. The reel may be shipped.',
  conditional: 'Every requirement is met, but not every one by enough to be sure. The certificate says so; ask whether the order allows it before you ship.',
  rejected: 'At least one requirement fails. Do not ship this reel.',
  incomplete: 'Nothing fails, but not everything was tested. Do not ship this reel yet.',
};
const HELD_LINE = 'The reel passed its test, but it is on hold. Do not ship it.';
const SIGNS = {
  accepted: '✓', rejected: '✕', incomplete: '△', pass: '✓', fail: '✕', 'not-tested': '△',
  'conditional-pass': '(✓)', 'conditional-fail': '(✕)',
};

const fails = (finding) => finding.outcome.endsWith('fail');

const outcome = (finding) => `${SIGNS[finding.outcome]} ${finding.outcome.replace('-', ' ')}`;

// A record that is accepted only conditionally has a look of its own.
const look = (record) => (record.conditional ? 'conditional' : record.verdict);

const verdictWord = (record) => record.verdict + (record.conditional ? ', conditionally' : '');

// ---- figures in words

function name(finding) {
  const [word] = WORDS[finding.property] || [finding.property];
  const rest = finding.requirement && finding.requirement.startsWith(finding.property + '-')
    ? finding.requirement.slice(finding.property.length + 1) : '';
  return rest ? `${word}, ${STATISTICS[rest] || rest.replaceAll('-', ' ')}` : word;
}

const plain = (finding) => (WORDS[finding.property] || ['', ''])[1];

const CURVE_PLACES = 2;
const MOST_PLACES = 9;

function figure(value, places) {
  return value === null || value === undefined ? '' : value.toFixed(places).replace('-', '−');
}

// As on the certificate: one place more than the limit is printed with, two where it is a curve. Never so coarse that a fail
// reads as a pass.
function places(finding) {
  if (finding.unit === 'count') return 0;
  let count = finding.frequency ? CURVE_PLACES : (String(finding.limit).split('.')[1] || '').length + 1;
  while (count < MOST_PLACES && finding.margin !== 0 && Number(finding.margin.toFixed(count)) === 0) count++;
  return Math.min(count, MOST_PLACES);
}

// What was compared with the limit: rounded where the limit set says so.
const compared = (finding) => finding.judged ?? finding.value;

// Two digits, rounded up: what is said of an uncertainty is never less than it is.
function uncertainty(finding) {
  const value = finding.uncertainty.value;
  if (value === 0) return '± 0';
  const digits = 1 - Math.floor(Math.log10(value));
  const step = 10 ** -digits;
  const up = Math.ceil(Number((value / step).toPrecision(12))) * step;
  return `± ${up.toFixed(Math.max(0, digits))}`;
}

// Never said to be certain.
function probability(value) {
  if (value > 0.999) return 'above 99.9 %';
  return value < 0.001 ? 'below 0.1 %' : `${(100 * value).toFixed(1)} %`;
}

const DIRECTED = new Set(['acr-f', 'fext']);

function where(finding) {
  const parts = [];
  if (finding.partner) {
    parts.push(DIRECTED.has(finding.property) ? `pair ${finding.pair} from ${finding.partner}` : `pairs ${finding.pair} and ${finding.partner}`);
  } else if (finding.pair) {
    parts.push(`pair ${finding.pair}`);
  }
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

// A reason names up to three places and counts the rest: "range not spanned: …; range not spanned: …; and 9 more".
function obstacles(reason) {
  const parts = reason.split(/; (?=[a-z ]+: |and \d+ more$)/);
  const more = parts[parts.length - 1].match(/^and (\d+) more$/);
  return more ? { named: parts.slice(0, -1), others: Number(more[1]) } : { named: parts, others: 0 };
}

function shortReason(finding) {
  if (!finding.reason) return '';
  const { named, others } = obstacles(finding.reason.replaceAll(`${finding.property} of `, ''));
  const rest = named.length - 1 + others;
  return rest ? `${named[0]} (and ${rest} more)` : named[0];
}

function sentence(finding) {
  if (finding.outcome === 'not-tested') return `not tested: ${shortReason(finding)}`;
  const digits = places(finding);
  const unit = finding.unit === 'count' ? '' : ' ' + finding.unit;
  return `${figure(compared(finding), digits)}${unit}${finding.pair || finding.frequency ? ' at ' + where(finding) : ''}; the limit is ${sign(finding)} ${figure(finding.limit, digits)}${unit}`
    + (fails(finding) && finding.margin < 0 ? ', missed by ' : ', met by ')
    + `${figure(Math.abs(finding.margin), digits)}${unit}${guarded(finding)}`;
}

// Why a value that meets its limit is not a plain pass, or one that misses it not a plain fail.
function guarded(finding) {
  if (finding.outcome === 'fail' && finding.margin < 0) return '';
  return `, ${finding.outcome === 'conditional-fail' ? 'by no more' : 'less'} than the decision rule's band (${finding.decisionRule});`
    + ` the true value meets the limit with a probability of ${probability(finding.probabilityOfConformity)}`;
}

const HIGH_VOLTAGE = new Set(['dielectric-withstand', 'spark-faults', 'insulation-faults']);
const CAUTION = 'High voltage: follow local codes and licensed practice';

const caution = (finding) => (HIGH_VOLTAGE.has(finding.property) ? element('span', { class: 'caution' }, CAUTION) : null);

// Faults that may sit in one place of the cable, so that cutting it away may save the rest.
const MAY_BE_LOCAL = new Set(['dielectric-withstand', 'spark-faults', 'insulation-resistance', 'return-loss', 'insulation-faults',
  'continuity-faults']);

// What completes a measurement, by the word with which its reason begins.
const REMEDIES = [
  ['equipment out of calibration', 'use equipment whose calibration holds'],
  ['temperature', 'let the reel reach the temperature that the limit asks for'],
  ['no data', 'measure what is missing'],
  ['pair missing', 'measure every pair'],
  ['range not spanned', 'measure over the whole frequency range of the limit'],
  ['grid too coarse', 'measure with finer frequency steps'],
  ['length too short', 'test a longer length: so short a one says too little at low frequencies'],
  ['too little tested', 'test more conductor length'],
];

function remedies(findings) {
  const causes = findings.flatMap((finding) => obstacles(finding.reason || '').named);
  const found = REMEDIES.filter(([cause]) => causes.some((one) => one.startsWith(cause))).map(([, remedy]) => remedy);
  return (found.length ? found : ['complete the measurement']).join('; ');
}

function nextSteps(record) {
  const failing = record.findings.filter(fails);
  const open = record.findings.filter((finding) => finding.outcome === 'not-tested');
  const steps = [];
  if (failing.length) {
    steps.push('Do not ship. Mark the reel as held and hand it over to the engineer.');
    steps.push('If the figure looks wrong, check leads and fixture and test again: a new test is a new attempt, the old one stays.');
    if (failing.some((finding) => MAY_BE_LOCAL.has(finding.property))) {
      steps.push('Such a fault may sit in one place: the reel may be cut back and tested again. Advice only, the engineer decides.');
    }
    if (failing.some((finding) => HIGH_VOLTAGE.has(finding.property))) {
      steps.push('Isolate and discharge before you touch the cable. ' + CAUTION + '.');
    }
  }
  if (record.conditional) {
    steps.push('A conditional pass is for the engineer to accept by the order: measure again with less uncertainty, or ship with the condition stated.');
  }
  if (open.length) {
    steps.push(`${failing.length ? 'Also not tested' : 'Complete the measurement'}: ${remedies(open)}. Then send the whole result again.`);
  }
  return steps;
}

// ---- search

const MOST_HITS = 50;
const TYPING_PAUSE_MS = 150;
let searchTimer;
let searchNumber = 0;

function showHits(hits, note = '') {
  state.hits = hits;
  byId('hits-note').textContent = note;
  byId('found').hidden = hits.length === 0;
  const list = byId('hits');
  list.replaceChildren(...hits.map((hit, index) => element('li',
    { role: 'option', id: 'hit-' + index,
      onmousedown: (event) => { event.preventDefault(); choose(hit.reel); } },
    element('strong', {}, hit.reel),
    element('span', { class: 'what' }, [hit.product, hit.order, hit.customer].filter(Boolean).join(' · ')),
    element('span', { class: 'what verdict-of-hit' }, hit.verdict || 'not tested'))));
  byId('query').setAttribute('aria-expanded', String(hits.length > 0));
  select(-1);
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

// The reels found; null when a later search has begun.
async function find(text) {
  const number = ++searchNumber;
  const { reels } = await getJson(`/api/v1/reels?limit=${MOST_HITS}&query=${encodeURIComponent(text)}`);
  return number === searchNumber ? reels : null;
}

// The reel of exactly that number. A part of a number never opens a reel: a result would land on the wrong one.
async function exactly(text, hits) {
  const same = hits.filter((hit) => hit.reel.toLowerCase() === text.toLowerCase());
  const exact = same.find((hit) => hit.reel === text) || (same.length === 1 ? same[0] : null);
  if (exact || hits.length < MOST_HITS) return exact;
  return getJson(path('reels', text)).catch((e) => { if (e.status === 404) return null; throw e; });
}

function choose(reel) {
  clearTimeout(searchTimer);
  searchNumber++;
  notice('');
  showHits([]);
  byId('query').value = '';
  if (location.hash === '#/reel/' + encodeURIComponent(reel)) openReel(reel);
  else location.hash = '#/reel/' + encodeURIComponent(reel);
}

byId('query').addEventListener('input', () => {
  clearTimeout(searchTimer);
  select(-1);
  const text = byId('query').value.trim();
  if (!text) { searchNumber++; showHits([]); return; }
  searchTimer = setTimeout(() => find(text).then((reels) => { if (reels) showHits(reels); }).catch((e) => notice(e.message)), TYPING_PAUSE_MS);
});

byId('query').addEventListener('keydown', (event) => {
  if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    if (!state.hits.length) return;
    event.preventDefault();
    const last = state.hits.length - 1;
    if (event.key === 'ArrowDown') select(state.selected === last ? 0 : state.selected + 1);
    else select(state.selected <= 0 ? last : state.selected - 1);
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
  if (state.selected >= 0) {
    choose(state.hits[state.selected].reel);
    return;
  }
  try {
    const reels = await find(text);
    if (!reels) return;
    const number = searchNumber;
    const exact = await exactly(text, reels);
    if (number !== searchNumber) return;
    if (exact) {
      choose(exact.reel);
      return;
    }
    showHits(reels, `No reel has exactly the number “${text}”. Choose with the arrow keys and Enter, or scan again.`);
    if (!reels.length) notice(`No reel, order or customer matches “${text}”. Check the number, or register the reel first.`);
    byId('query').select();
  } catch (e) {
    notice(e.message);
    byId('query').select();
  }
});

// A scanner types wherever the focus is: its characters belong in the search box.
document.addEventListener('keydown', (event) => {
  const printable = event.key.length === 1 && event.key !== ' ' && !event.ctrlKey && !event.metaKey && !event.altKey;
  if (!printable || event.target === byId('query')) return;
  if (byId('explain').open) byId('explain').close();
  byId('query').value = '';
  byId('query').focus();
});

document.addEventListener('click', (event) => { if (!byId('search').contains(event.target)) showHits([]); });

// ---- start view

async function showStart() {
  state.opened++;
  document.title = 'Reelproof';
  byId('reel').hidden = true;
  byId('start').hidden = false;
  state.reel = null;
  const { reels } = await getJson('/api/v1/reels?limit=20&query=');
  byId('recent').replaceChildren(...reels.map((reel) => element('tr', {},
    element('td', {}, element('a', { href: '#/reel/' + encodeURIComponent(reel.reel) }, reel.reel)),
    element('td', {}, reel.product || ''), element('td', {}, reel.order || ''), element('td', {}, reel.customer || ''),
    element('td', {}, time(reel.tested)),
    element('td', { class: 'tag ' + (reel.verdict || '') }, reel.verdict ? `${SIGNS[reel.verdict]} ${reel.verdict}` : 'not tested'))));
}

// ---- a reel

async function openReel(number) {
  const opened = ++state.opened;
  notice('');
  byId('faults').hidden = true;
  byId('upload-state').textContent = '';
  try {
    const reel = await getJson(path('reels', number));
    if (opened !== state.opened) return;
    state.reel = reel;
    document.title = reel.reel + ' · Reelproof';
    byId('start').hidden = true;
    byId('reel').hidden = false;
    byId('reel-number').textContent = 'Reel ' + reel.reel;
    byId('reel-facts').replaceChildren(...[['Product', reel.product], ['Length', reel.length && `${reel.length.value} ${reel.length.unit}`],
      ['Order', reel.order], ['Customer', reel.customer], ['Plant', reel.plant]]
      .filter(([, value]) => value)
      .map(([label, value]) => element('div', {}, element('dt', {}, label), element('dd', {}, value))));
    showHolds(reel);
    showRecord(reel.records[0] || null);
  } catch (e) {
    if (opened !== state.opened) return;
    await showStart().catch(() => {});
    notice(e.status === 404 ? `Reel ${number} is not known here. Check the number, or register the reel first.` : e.message);
    byId('query').focus();
  }
}

const isHeld = () => (state.reel.holds || []).length > 0;

function showHolds(reel) {
  byId('held').hidden = !isHeld();
  byId('held').replaceChildren(element('h2', {}, 'On hold'),
    element('p', {}, 'Do not ship this reel; it gets no certificate until the hold is released by somebody other than who placed it.'),
    element('ul', {}, ...(reel.holds || []).map((hold) => element('li', {}, element('strong', {}, hold.reason),
      ` (hold ${hold.id} of ${held(hold)}, by ${hold.heldBy}, `, time(hold.held), ')'))));
}

function held(hold) {
  if (hold.machine) return `machine ${hold.machine}`;
  if (hold.run) return `run ${hold.run}`;
  return hold.reel ? `reel ${hold.reel}` : `lot ${hold.lot}`;
}

function showRecord(record) {
  state.record = record;
  const number = ++state.shown;
  byId('record').hidden = !record;
  byId('untested').hidden = Boolean(record);
  if (!record) return;
  const newest = state.reel.records[0];
  const older = newest.id !== record.id;
  // At arm's length a held reel must not look like one that may go.
  const stopped = !older && isHeld() && record.verdict === 'accepted';
  byId('verdict').className = 'verdict ' + [stopped ? 'held' : record.verdict, record.conditional ? 'conditional' : '', older ? 'older' : '']
    .filter(Boolean).join(' ');
  byId('older').hidden = !older;
  byId('older').textContent = older
    ? `Older attempt ${record.attempt} of ${newest.attempt}. The newest counts, and it is ${verdictWord(newest).toUpperCase()}.` : '';
  byId('verdict-mark').replaceChildren(...MARKS[stopped ? 'incomplete' : look(record)].map(([tag, attributes]) => svg(tag, attributes)));
  byId('verdict-word').textContent = (verdictWord(record) + (stopped ? ', on hold' : '')).toUpperCase();
  byId('verdict-line').replaceChildren(older ? '' : stopped ? HELD_LINE : VERDICT_LINES[look(record)],
    ` Attempt ${record.attempt}, tested `, time(record.finished) || 'at an unknown time',
    `, by ${record.limitSet.id} revision ${record.limitSet.revision}.`);
  byId('warnings').hidden = !(record.warnings || []).length;
  byId('warnings').replaceChildren(...(record.warnings || []).map((warning) => element('li', {}, warning)));
  showReasons(record);
  showAttempts(record);
  byId('requirements').replaceChildren(...record.findings.map(row));
  showCertificate(record);
  showAlternatives(record, number);
  showPlots(record, number);
}

function showReasons(record) {
  const order = { fail: 0, 'conditional-fail': 1, 'not-tested': 2, 'conditional-pass': 3 };
  const reasons = record.findings.filter((finding) => finding.outcome !== 'pass')
    .sort((one, other) => order[one.outcome] - order[other.outcome]);
  byId('reasons-section').hidden = reasons.length === 0;
  byId('reasons').replaceChildren(...reasons.map((finding) => element('li', { class: finding.outcome },
    element('strong', {}, `${SIGNS[finding.outcome]} ${name(finding)}`),
    element('span', { class: 'plain' }, plain(finding) ? ` (${plain(finding)}): ` : ': '), sentence(finding), caution(finding))));
  byId('next-step').replaceChildren(...nextSteps(record).map((step) => element('li', {}, step)));
}

// After the verdict, so that it never waits for it. Advice that cannot be had is left out.
async function showAlternatives(record, number) {
  byId('alternatives-section').hidden = true;
  if (record.verdict !== 'rejected') return;
  let found;
  try {
    found = await getJson(path('records', record.id, 'alternatives'));
  } catch (e) {
    if (number === state.shown) notice(`What else this reel could be cannot be shown. ${e.message}`);
    return;
  }
  if (number !== state.shown) return;
  const words = (requirement, property = requirement) => name({ requirement, property });
  const properties = new Map(record.findings.map((finding) => [finding.requirement, finding.property]));
  const lines = found.cutTo
    ? [`Shorter: a piece of ${found.cutTo.value} ${found.cutTo.unit} or less would be expected to pass. The piece is a new reel and must be tested.`]
    : found.requirements.filter((one) => one.outcome !== 'not-tested' && !one.cuttingChangesIt)
      .map((one) => `Cutting does not mend it: ${words(one.requirement, one.property)}${one.why.slice(one.requirement.length)}`);
  if (!lines.length) lines.push('Shorter: no length was found at which all that fails would pass.');
  for (const set of found.limitSets) {
    const reason = set.verdict === 'accepted' ? 'passes as measured'
      : set.onlyObstacle ? `does not pass; only ${words(set.onlyObstacle, properties.get(set.onlyObstacle))} stands in the way`
        : set.inTheWay.length ? `does not pass; ${set.inTheWay.length} requirements stand in the way` : 'cannot be judged';
    lines.push(`${set.title} (${set.limitSet}): ${reason}.`);
  }
  if (!found.limitSets.length) lines.push('No other limit set grades this construction.');
  byId('alternatives').replaceChildren(...lines.map((line) => element('li', {}, line)));
  byId('alternatives-section').hidden = false;
}

function showAttempts(record) {
  const records = state.reel.records;
  byId('attempt-label').hidden = records.length < 2;
  byId('attempt').replaceChildren(...records.map((one, index) => {
    const option = element('option', { value: String(index) }, `${one.attempt}: ${verdictWord(one)}`);
    option.selected = one.id === record.id;
    return option;
  }));
}

byId('attempt').addEventListener('change', () => showRecord(state.reel.records[Number(byId('attempt').value)]));

function row(finding) {
  const digits = finding.value === null ? 0 : places(finding);
  const note = [shortReason(finding) || plain(finding), finding.derived && finding.requirement === finding.property ? 'computed from its parts' : ''].filter(Boolean).join(' · ');
  const unit = finding.unit === 'count' ? '' : finding.unit || '';
  return element('tr', { class: finding.outcome, tabindex: '0',
    onclick: () => explain(finding),
    onkeydown: (event) => rowKey(event, finding) },
  element('td', {}, element('strong', {}, name(finding)), element('small', {}, note),
    caution(finding)),
  element('td', { class: 'tag ' + finding.outcome }, outcome(finding)),
  element('td', { class: 'n' }, figure(compared(finding), digits)),
  element('td', { class: 'n' }, finding.limit === null ? '' : `${sign(finding) === 'at most' ? '≤' : '≥'} ${figure(finding.limit, digits)}`,
    unit ? element('small', {}, unit) : null),
  element('td', { class: 'n' }, figure(finding.margin, digits)),
  element('td', { class: 'n' }, finding.uncertainty ? uncertainty(finding) : '',
    finding.uncertainty ? element('small', {}, `conforms: ${probability(finding.probabilityOfConformity)}`) : null),
  element('td', {}, finding.value === null ? '' : where(finding)), element('td', { class: 'n points' }, String(finding.points)));
}

function rowKey(event, finding) {
  const line = event.currentTarget;
  const neighbour = { ArrowDown: line.nextElementSibling, ArrowUp: line.previousElementSibling }[event.key];
  if (event.key === 'Enter' || event.key === ' ') explain(finding);
  else if (neighbour) neighbour.focus();
  else return;
  event.preventDefault();
}

async function explain(finding) {
  try {
    const found = await getJson(path('records', state.record.id, 'findings', finding.requirement || finding.property));
    byId('explain-title').textContent = `${name(finding)}: where the figure comes from`;
    byId('explain-steps').replaceChildren(...(found.explanation || []).map((step) => element('li', {},
      element('span', { class: 'title' }, step.title), element('span', { class: 'detail' }, step.detail),
      element('span', { class: 'n' }, `${String(Number(step.value.toPrecision(9))).replace('-', '−')} ${step.unit}`),
      step.source ? element('span', { class: 'source' }, 'Source: ' + step.source) : null)));
    const reason = obstacles(found.reason || '');
    const others = reason.others ? [`and ${reason.others} more`] : [];
    byId('explain-reason').replaceChildren(...[...reason.named.filter(Boolean), ...others].map((one) => element('li', {}, one)));
    byId('explain-reason').hidden = !found.reason;
    byId('explain-rule').textContent = found.decisionRule ? `Decision rule: ${found.decisionRule}.` : '';
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
  if (isHeld()) { box.replaceChildren(element('p', {}, 'No certificate while the reel is on hold.')); return; }
  box.replaceChildren(may(state.who, 'issue') ? element('button', { type: 'button', id: 'issue', onclick: issue }, 'Issue certificate')
    : element('p', {}, 'No certificate yet. Customer service or the quality manager issues it.'));
}

const certificateLink = (certificate) =>
  element('a', { href: certificate.pdf, id: 'certificate-link', download: certificate.number + '.pdf' }, 'Certificate ' + certificate.number);

async function issue() {
  byId('issue').disabled = true;
  const { reel, record } = state;
  try {
    const certificate = await getJson(path('reels', reel.reel, 'certificates'), { method: 'POST' });
    reel.certificates = [{ record: record.id, ...certificate }, ...(reel.certificates || [])];
    if (state.record !== record) return;
    byId('certificate').replaceChildren(certificateLink(certificate));
    byId('certificate-link').focus();
  } catch (e) {
    if (state.record === record) byId('certificate').replaceChildren(element('p', { role: 'alert' }, e.message));
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
const MOST_BYTES = 50 * 1024 * 1024;

const listed = (files) => files.map((file) => file.name).join(', ');

async function send(files) {
  if (!files.length || !state.reel) return;
  const documents = files.filter((file) => file.name.toLowerCase().endsWith('.json'));
  const zips = files.filter((file) => file.name.toLowerCase().endsWith('.zip'));
  const reel = state.reel.reel;
  byId('faults').hidden = true;
  // A ZIP file may hold the document; the service says so when it does not.
  if (documents.length !== 1 && !(documents.length === 0 && zips.length > 0)) {
    showFaults(reel, { title: 'which file is the result?', detail: `Give one file that ends in .json, with any number of CSV, Touchstone and ZIP files beside it, not ${listed(files)}.` });
    return;
  }
  if (files.reduce((sum, file) => sum + file.size, 0) > MOST_BYTES) {
    showFaults(reel, { title: 'too large', detail: 'The service takes at most 50 MB at once. Send the sweeps with fewer points.' });
    return;
  }
  // Signed out meanwhile: the service's own 401 says so.
  const who = await freshSession().catch(() => null);
  const request = new XMLHttpRequest();
  request.open('POST', path('reels', reel, 'tests'));
  request.setRequestHeader('Accept', 'application/json');
  if (who && who.csrf) request.setRequestHeader('X-CSRF-Token', who.csrf);
  let body;
  if (files.length === 1 && documents.length === 1) {
    body = documents[0];
    request.setRequestHeader('Content-Type', 'application/json');
  } else {
    body = new FormData();
    documents.forEach((file) => body.append('result', new Blob([file], { type: 'application/json' }), file.name));
    files.filter((file) => file !== documents[0]).forEach((file) => {
      const type = file.name.toLowerCase().endsWith('.csv') ? 'text/csv' : 'application/octet-stream';
      body.append(file.name, new Blob([file], { type }), file.name);
    });
  }
  byId('progress').hidden = false;
  byId('progress').value = 0;
  byId('upload-state').textContent = `Sending ${listed(files)}…`;
  request.upload.onprogress = (event) => {
    if (event.lengthComputable) byId('progress').value = 100 * event.loaded / event.total;
    if (event.loaded === event.total) byId('upload-state').textContent = 'Judging…';
  };
  request.onerror = () => done({ title: 'no answer came', detail: 'The connection to the service broke. Send the file again: a file that was taken already is not taken twice.' });
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
    if (problem) showFaults(reel, problem);
  };
  request.send(body);
}

function showFaults(reel, problem) {
  const errors = problem.errors || [];
  if (state.record && state.reel.reel === reel) {
    byId('verdict').classList.add('older');
    byId('older').textContent = 'The file just sent was not taken. This is the verdict of an earlier one:';
    byId('older').hidden = false;
  }
  const box = byId('faults');
  box.replaceChildren(element('h2', {}, `Not taken for reel ${reel}: ${problem.title || 'the file has a fault'}`),
    errors.length ? '' : element('p', {}, problem.detail || ''),
    problem.signIn ? element('p', {}, element('a', { href: signInAddress() }, 'Sign in')) : '',
    element('ul', {}, ...errors.map((fault) => element('li', {}, element('code', {}, fault.where || ''), ' ', fault.message))));
  box.hidden = false;
  box.scrollIntoView({ block: 'nearest' });
}

// ---- plots

async function showPlots(record, number) {
  byId('plots').replaceChildren();
  byId('plots-section').hidden = true;
  const swept = new Set(record.findings
    .filter((finding) => finding.frequency || (finding.outcome === 'not-tested' && SWEPT.has(finding.property) && !finding.reason.startsWith('no data')))
    .map((finding) => finding.property));
  for (const property of swept) {
    let sweeps;
    try {
      sweeps = await getJson(path('records', record.id, 'sweeps', property));
    } catch (e) {
      if (e.status === 404) continue;
      if (number === state.shown) notice(`The curves cannot be shown. ${e.message}`);
      return;
    }
    if (number !== state.shown) return;
    if (sweeps.sweeps.some((sweep) => sweep.frequencies.length > 1)) {
      byId('plots-section').hidden = false;
      const findings = record.findings.filter((finding) => finding.property === property);
      plot(findings.find((finding) => sweeps.limit && finding.requirement === sweeps.limit.requirement) || findings[0], sweeps);
    }
  }
}

const SWEPT = new Set(['insertion-loss', 'next', 'ps-next', 'acr-f', 'ps-acr-f', 'fext', 'return-loss', 'input-impedance',
  'tcl', 'tctl', 'el-tctl', 'propagation-delay', 'group-delay', 'delay-skew']);
const PLOT_HEIGHT = 250;
const LINE_DASHES = [[], [6, 3], [2, 3], [9, 3, 2, 3]];

function plot(finding, data) {
  const box = element('article', { class: 'plot ' + finding.outcome },
    element('h3', {}, (WORDS[data.property] || [data.property])[0] + ', ' + data.unit),
    element('p', {}, finding.frequency
      ? `${outcome(finding)}; least margin ${figure(finding.margin, places(finding))} ${finding.unit}: ${where(finding)}`
      : `${outcome(finding)}: ${shortReason(finding)}`));
  const target = element('div', { role: 'img', 'aria-label': `${(WORDS[data.property] || [data.property])[0]} over frequency with its limit` });
  box.append(target);
  byId('plots').append(box);
  // One axis for all: the union of every sweep's frequencies and the limit's; a gap joins its neighbours.
  const limits = data.limits.filter((limit) => limit.frequencies.length && limit.unit === data.unit);
  const frequencies = [...new Set([...data.sweeps, ...limits].flatMap((one) => one.frequencies))].sort((a, b) => a - b);
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
    const label = [sweep.partner ? DIRECTED.has(data.property) ? `${sweep.pair} from ${sweep.partner}` : `${sweep.pair}-${sweep.partner}` : sweep.pair ? `pair ${sweep.pair}` : 'reel', sweep.end === 'far' ? 'far' : '']
      .filter(Boolean).join(' ');
    series.push({ label, stroke, dash, width: many ? 0.8 : 1.2, spanGaps: true, points: { show: false } });
    columns.push(spread(sweep.frequencies, sweep.corrected));
    if (!many) key.push([label, stroke, dash]);
  });
  limits.forEach((limit, index) => {
    const dash = LINE_DASHES[index % LINE_DASHES.length];
    for (const bound of [limit.upper, limit.lower].filter(Boolean)) {
      series.push({ label: 'limit', stroke: '#15202b', width: 3, dash, spanGaps: true,
        points: { show: limit.frequencies.length === 1, size: 12, fill: '#15202b' } });
      columns.push(spread(limit.frequencies, bound));
    }
  });
  const ring = (chart) => {
    if (!finding.frequency) return;
    const x = chart.valToPos(finding.frequency.value, 'x', true);
    const y = chart.valToPos(finding.value, 'y', true);
    chart.ctx.save();
    chart.ctx.lineWidth = 2 * devicePixelRatio;
    chart.ctx.strokeStyle = fails(finding) ? '#a3180f' : '#15202b';
    chart.ctx.beginPath();
    chart.ctx.arc(x, y, 7 * devicePixelRatio, 0, 2 * Math.PI);
    chart.ctx.stroke();
    chart.ctx.restore();
  };
  const underADecade = frequencies[frequencies.length - 1] < 10 * frequencies[0];
  const wide = () => Math.max(300, box.clientWidth - 24);
  const chart = new uPlot({
    width: wide(), height: PLOT_HEIGHT, legend: { show: false }, cursor: { drag: { x: false, y: false } },
    scales: { x: { time: false, distr: 3, range: [frequencies[0], frequencies[frequencies.length - 1]] } },
    axes: [{ size: 34, filter: (u, ticks) => ticks, values: (u, ticks) => ticks.map((tick) => (underADecade || /^[125]e/.test(tick.toExponential()) ? String(Number(tick.toPrecision(3))) : '')) },
      { size: 46, values: (chart, ticks) => ticks.map((tick) => String(tick).replace('-', '−')) }],
    series, hooks: { draw: [ring] },
  }, columns, target);
  new ResizeObserver(() => { if (box.isConnected && chart.width !== wide()) chart.setSize({ width: wide(), height: PLOT_HEIGHT }); }).observe(box);
  const limitKey = limits.map((limit, index) => {
    const ofWhat = limit.requirement === data.property ? '' : ` on ${name({ requirement: limit.requirement, property: data.property })}`;
    const ofMany = limit.statistic === 'individual' || limit.requirement.endsWith(limit.statistic) ? '' : `, ${STATISTICS[limit.statistic]}`;
    const value = (limit.upper || limit.lower)[0];
    const atSpot = limit.frequencies.length === 1 ? `: ${value} ${limit.unit} at ${limit.frequencies[0]} MHz (dot)` : '';
    return ['limit' + ofWhat + ofMany + atSpot, '#15202b', LINE_DASHES[index % LINE_DASHES.length], 3];
  });
  box.append(element('ul', { class: 'key' }, ...[...key, ...limitKey].map(([label, stroke, dash, width]) => {
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
