// An order: its reels, what they lack before they may be shipped, their certificates together.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { button, byId, field, show } from '../page/dom.js';
import { requireSession } from '../page/header.js';
import { done, notice, noticeFault } from '../page/notices.js';
import { isStatus } from '../page/requests.js';
import { getJson, may } from '../page/session.js';
import { factList } from '../page/words.js';
import { startFinding } from '../reel/find.js';
import { turns } from '../reel/shown.js';
import { lineVerdict } from '../reel/start.js';
import { hideBatch, showBatch } from './batch.js';
import { issueCollective, showCollectives } from './collective.js';

const NOT_FOUND = 404;
const FEWEST_TOGETHER = 2;
const ASK_AGAIN_MS = 700;

const openings = turns();

/** @type {Answer.Session | null} */
let who = null;

/** @type {Answer.Order | null} */
let shown = null;

/** @param {string} reel */
const reelPage = (reel) => `/#/reel/${encodeURIComponent(reel)}`;

/** @param {Answer.OrderedReel} line */
const row = ({ reel, certificate, needsText }) => html`
  <tr>
    <td><a href=${reelPage(reel.reel)}>${reel.reel}</a></td>
    <td class="beside">${reel.product ?? ''}</td>
    <td class="beside">${reel.printedLength ?? ''}</td>
    <td class="tag ${reel.held ? 'held' : reel.look ?? ''}">${lineVerdict(reel)}</td>
    <td>${certificate ? html`<a href=${certificate.pdf} download="${certificate.number}.pdf">${certificate.number}</a>
      <small>${certificate.stateText}</small>` : nothing}</td>
    <td>${needsText || '✓ nothing'}</td>
  </tr>`;

/** Nothing of the order before stays while another is looked for. */
function clear() {
  shown = null;
  show('order', false);
  hideBatch();
  show('text-section', false);
  byId('text', HTMLTextAreaElement).value = '';
  notice('');
  done('');
  byId('order-name').textContent = '';
  byId('readiness').textContent = '';
  render(nothing, byId('order-facts'));
  render(nothing, byId('order-reels'));
  byId('zip').removeAttribute('href');
  document.title = 'Order · Reelproof';
}

/** @param {Answer.Order} order */
function showOrder(order) {
  shown = order;
  document.title = `Order ${order.order} · Reelproof`;
  byId('order-name').textContent = `Order ${order.order}`;
  byId('readiness').textContent = order.sentence;
  render(factList([['Customer', order.customers.join('; ')], ['Reels', order.reelCount]]), byId('order-facts'));
  render(order.reels.map(row), byId('order-reels'));
  show('issue-all', may(who, 'issue') && order.ready < order.reelCount);
  show('issue-collective', may(who, 'issue') && order.reelCount >= FEWEST_TOGETHER && order.ready === order.reelCount);
  showCollectives(order.collectiveCertificates);
  show('zip', order.ready > 0);
  show('copy-text', order.ready > 0);
  byId('zip').setAttribute('href', path('orders', order.order, 'certificates.zip'));
  show('order', true);
}

/**
 * Asks until the batch is finished, then shows the order anew.
 *
 * @param {string} order
 * @param {Answer.Batch} batch
 * @param {() => boolean} isNewest
 * @param {boolean} begun whether it was asked for just now, so that the order as shown knows nothing of it
 */
async function follow(order, batch, isNewest, begun) {
  let now = batch;
  while (!now.finished) {
    button('issue-all').disabled = true;
    showBatch(now);
    await new Promise((later) => { setTimeout(later, ASK_AGAIN_MS); });
    if (!isNewest()) return;
    now = await getJson(path('certificate-batches', now.id));
    if (!isNewest()) return;
  }
  button('issue-all').disabled = false;
  if (begun || now !== batch) {
    const fresh = await getJson(path('orders', order));
    if (!isNewest()) return;
    showOrder(fresh);
  }
  showBatch(now);
}

/** @param {string} name */
async function open(name) {
  const isNewest = openings.next();
  clear();
  try {
    /** @type {Answer.Order} */
    const order = await getJson(path('orders', name));
    if (!isNewest()) return;
    button('issue-all').disabled = false;
    showOrder(order);
    if (order.batch) await follow(name, order.batch, isNewest, false);
  } catch (fault) {
    if (!isNewest()) return;
    if (isStatus(fault, NOT_FOUND)) notice(`No reel is registered for order ${name}. Search for the order above.`);
    else noticeFault(fault);
  }
}

async function issueAll() {
  if (!shown) return;
  const name = shown.order;
  const isNewest = openings.next();
  button('issue-all').disabled = true;
  notice('');
  try {
    const batch = await getJson(path('orders', name, 'certificates'), { method: 'POST' });
    if (isNewest()) await follow(name, batch, isNewest, true);
  } catch (fault) {
    if (!isNewest()) return;
    button('issue-all').disabled = false;
    noticeFault(fault);
  }
}

async function issueTogether() {
  if (!shown) return;
  const name = shown.order;
  const isNewest = openings.next();
  button('issue-collective').disabled = true;
  notice('');
  done('');
  try {
    const issued = await issueCollective(name);
    const fresh = await getJson(path('orders', name));
    if (!isNewest()) return;
    showOrder(fresh);
    done(`Certificate ${issued.number} stands for ${issued.certificates.length} reels of order ${name}.`);
  } catch (fault) {
    if (isNewest()) noticeFault(fault);
  } finally {
    button('issue-collective').disabled = false;
  }
}

/**
 * Whether the browser took a text into its clipboard: it has none over plain http from elsewhere, and a person may deny it.
 *
 * @param {string} text
 */
async function isCopied(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

async function copyText() {
  if (!shown) return;
  const name = shown.order;
  notice('');
  try {
    const answer = await fetch(path('orders', name, 'certificates.txt'), { credentials: 'same-origin' });
    if (!answer.ok) throw new Error(`The text could not be fetched (${answer.status}). Try again.`);
    const text = await answer.text();
    if (shown?.order !== name) return;
    const area = byId('text', HTMLTextAreaElement);
    area.value = text;
    show('text-section', true);
    if (await isCopied(text)) {
      done(`The text about the certificates of order ${name} was copied. Paste it into the mail.`);
    } else {
      done('The text is selected: copy it from here into the mail.');
      area.focus();
      area.select();
    }
  } catch (fault) {
    noticeFault(fault);
  }
}

function route() {
  const match = location.hash.match(/^#\/(.+)$/);
  if (match) open(decodeURIComponent(match[1]));
  else {
    openings.next();
    clear();
    notice('Search for an order above: scan or type its number.');
  }
  field('query').focus({ preventScroll: true });
}

async function start() {
  startFinding((reel) => location.assign(reelPage(reel)));
  who = await requireSession();
  byId('issue-all').addEventListener('click', issueAll);
  byId('issue-collective').addEventListener('click', issueTogether);
  byId('copy-text').addEventListener('click', copyText);
  window.addEventListener('hashchange', route);
  route();
}

start().catch(noticeFault);
