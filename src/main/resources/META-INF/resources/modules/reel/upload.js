// Sending a result: chosen or dropped, with its progress, and what the service says to it.

import { path } from '../page/addresses.js';
import { byId, field, onSubmit, show } from '../page/dom.js';
import { takeDrops } from '../page/dropping.js';
import { notice } from '../page/notices.js';
import { may } from '../page/session.js';
import { clearFaults, showFaults } from './faults.js';
import { openReel } from './open.js';
import { listed, parcel, parcelFault } from './parcel.js';
import { send } from './send.js';
import { shown } from './shown.js';

const NO_UPLOAD = 'Your roles may read results, not send them. Technicians, engineers and quality managers send them.';

/** @param {string} text */
const sayState = (text) => { byId('upload-state').textContent = text; };

/**
 * What is said of a file that was taken, now or before.
 *
 * @param {{ isNew: boolean, record: Answer.Record | null }} sent
 */
function takenLine({ isNew, record }) {
  const older = record && !record.newest ? ' It is an older test: another one decides on the reel.' : '';
  return (isNew ? 'Taken and judged.' : 'This very file was taken before; its record is shown.') + older;
}

/**
 * @param {string} reel
 * @param {{ isNew: boolean, record: Answer.Record | null }} sent
 */
async function taken(reel, sent) {
  if (shown.reel?.reel !== reel) return;
  await openReel(reel, { record: sent.record?.id, isTakenBefore: !sent.isNew });
  field('retest-reason').value = '';
  sayState(takenLine(sent));
  byId('verdict').scrollIntoView({ block: 'nearest' });
  field('query').focus({ preventScroll: true });
}

/** @param {File[]} files */
async function upload(files) {
  const reel = shown.reel?.reel;
  if (!files.length || !reel) return;
  clearFaults();
  const fault = parcelFault(files);
  if (fault) {
    showFaults(reel, fault);
    return;
  }
  const progress = byId('progress', HTMLProgressElement);
  progress.value = 0;
  progress.hidden = false;
  sayState(`Sending ${listed(files)}…`);
  const answer = await send(path('reels', reel, 'tests'), parcel(files, field('retest-reason').value.trim()), (share) => {
    progress.value = 100 * share;
    if (share === 1) sayState('Judging…');
  });
  progress.hidden = true;
  sayState('');
  if (answer.kind === 'taken') await taken(reel, answer);
  else showFaults(reel, answer.problem, answer.kind === 'signed-out');
}

export function startUploads() {
  const mayUpload = () => may(shown.who, 'upload');
  field('files').addEventListener('change', () => {
    upload([...(field('files').files ?? [])]);
    field('files').value = '';
  });
  onSubmit('upload', () => {});
  takeDrops((files) => {
    if (!mayUpload()) notice(NO_UPLOAD);
    else if (shown.reel) upload(files);
    else notice('Open the reel first, then drop its result file.');
  }, () => shown.reel !== null && mayUpload());
  show('upload', mayUpload());
}
