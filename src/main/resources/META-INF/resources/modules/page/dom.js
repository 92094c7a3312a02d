// The frame's elements, by their ids.

/**
 * The element of that id. Its kind is checked, so that a frame and a module that have drifted apart say so at once.
 *
 * @template {Element} [T=HTMLElement]
 * @param {string} id
 * @param {new () => T} [kind]
 * @returns {T}
 */
export function byId(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof (kind ?? HTMLElement))) throw new Error(`This page has no such element as '${id}'.`);
  return /** @type {T} */ (/** @type {unknown} */ (found));
}

/** @param {string} id */
export const field = (id) => byId(id, HTMLInputElement);

/** @param {string} id */
export const button = (id) => byId(id, HTMLButtonElement);

/** @param {string} id */
export const dialog = (id) => byId(id, HTMLDialogElement);

/**
 * @param {string} id
 * @param {boolean} visible
 */
export function show(id, visible) {
  byId(id).hidden = !visible;
}

/**
 * Calls when a form is submitted; the browser itself sends nothing.
 *
 * @param {string} id
 * @param {() => unknown} act
 */
export function onSubmit(id, act) {
  byId(id).addEventListener('submit', (event) => {
    event.preventDefault();
    act();
  });
}
