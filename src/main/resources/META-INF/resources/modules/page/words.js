// Names and times as a person reads them.

import { html } from '/_static/lit-html/lit-html.js';

/**
 * A name of the API in words: customer-service, customer service.
 *
 * @param {string} name
 */
export const words = (name) => name.replaceAll('-', ' ');

/**
 * A time, local, with UTC for whoever points at it.
 *
 * @param {string} text
 */
export function time(text) {
  const moment = new Date(text);
  return html`<time datetime=${text} title="${moment.toISOString()} (UTC)">${
    moment.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })}</time>`;
}

/**
 * Facts with their names; those that there are.
 *
 * @param {[string, unknown][]} facts
 */
export const factList = (facts) => facts.filter(([, fact]) => fact)
  .map(([label, fact]) => html`<div><dt>${label}</dt><dd>${fact}</dd></div>`);

/**
 * What a list offers, its names in words.
 *
 * @param {string[]} names
 */
export const options = (names) => names.map((name) => html`<option value=${name}>${words(name)}</option>`);
