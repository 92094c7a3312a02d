// The first page: find a reel, drop its result, see the verdict with its reasons, take the certificate.

import { byId, field } from '../page/dom.js';
import { requireSession } from '../page/header.js';
import { noticeFault } from '../page/notices.js';
import { may } from '../page/session.js';
import { startFinding } from './find.js';
import { openReel, openStart } from './open.js';
import { startAttempts } from './record.js';
import { shown } from './shown.js';
import { reelAddress } from './start.js';
import { startUploads } from './upload.js';

async function route() {
  const match = location.hash.match(/^#\/reel\/(.+)$/);
  try {
    if (match) await openReel(decodeURIComponent(match[1]));
    else await openStart();
  } catch (fault) {
    noticeFault(fault);
  }
  field('query').focus({ preventScroll: true });
}

/** @param {string} reel */
function goTo(reel) {
  if (location.hash === reelAddress(reel)) openReel(reel);
  else location.hash = reelAddress(reel);
}

async function start() {
  startFinding(goTo);
  shown.who = await requireSession();
  const mayUpload = may(shown.who, 'upload');
  byId('untested').textContent = `This reel has not been tested yet.${mayUpload ? ' Drop its result file on this page.' : ''}`;
  byId('how').textContent =
    `Type or scan a reel number above and press Enter.${mayUpload ? ' Then drop its result file on this page.' : ''}`;
  startUploads();
  startAttempts();
  window.addEventListener('hashchange', route);
  await route();
}

start().catch(noticeFault);
