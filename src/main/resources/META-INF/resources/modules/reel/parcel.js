// What is sent when files are given.

const MOST_BYTES = 50 * 1024 * 1024;

/** @typedef {{ name: string, size: number }} Named */

/** @param {Named[]} files */
export const listed = (files) => files.map((file) => file.name).join(', ');

/**
 * @param {Named} file
 * @param {string} ending
 */
const endsWith = (file, ending) => file.name.toLowerCase().endsWith(ending);

/**
 * Why these files cannot be sent together; null when they can.
 *
 * @param {Named[]} files
 * @returns {Answer.Problem | null}
 */
export function parcelFault(files) {
  const documents = files.filter((file) => endsWith(file, '.json')).length;
  // A ZIP file may hold the document; the service says so when it does not.
  const mayHold = documents === 0 && files.some((file) => endsWith(file, '.zip'));
  if (documents !== 1 && !mayHold) {
    return { title: 'which file is the result?',
      detail: `Give one file that ends in .json, with any number of CSV, Touchstone and ZIP files beside it, not ${listed(files)}.` };
  }
  if (files.reduce((sum, file) => sum + file.size, 0) > MOST_BYTES) {
    return { title: 'too large', detail: 'The service takes at most 50 MB at once. Send the sweeps with fewer points.' };
  }
  return null;
}

/**
 * The name and the media type under which a file is sent as a part.
 *
 * @param {Named} file
 */
export function partOf(file) {
  if (endsWith(file, '.json')) return { part: 'result', type: 'application/json' };
  return { part: file.name, type: endsWith(file, '.csv') ? 'text/csv' : 'application/octet-stream' };
}

/**
 * Files that may be sent together, as the body of a request: a document alone as it is, where nothing is said beside it.
 *
 * @param {File[]} files
 * @param {string} [retestReason] why the reel is tested again; empty when it is not said
 * @returns {{ body: File | FormData, type: string | null }} the type is null where the browser says it
 */
export function parcel(files, retestReason = '') {
  if (!retestReason && files.length === 1 && endsWith(files[0], '.json')) return { body: files[0], type: 'application/json' };
  const body = new FormData();
  for (const file of files) {
    const { part, type } = partOf(file);
    body.append(part, new Blob([file], { type }), file.name);
  }
  if (retestReason) body.append('retestReason', retestReason);
  return { body, type: null };
}
