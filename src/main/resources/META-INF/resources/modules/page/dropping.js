// Files dropped anywhere on the page.

/**
 * Takes dropped files; while one hangs over the page, the page shows where it would go.
 *
 * @param {(files: File[]) => unknown} take
 * @param {() => boolean} [isWanted] whether to show that now
 */
export function takeDrops(take, isWanted = () => true) {
  for (const kind of ['dragenter', 'dragover']) {
    document.addEventListener(kind, (event) => {
      event.preventDefault();
      if (isWanted()) document.body.classList.add('dragging');
    });
  }
  document.addEventListener('dragleave', (event) => {
    if (!event.relatedTarget) document.body.classList.remove('dragging');
  });
  document.addEventListener('drop', (event) => {
    event.preventDefault();
    document.body.classList.remove('dragging');
    take([...(event.dataTransfer?.files ?? [])]);
  });
}
