// The shapes beside a verdict: told apart without colour.

import { svg } from '/_static/lit-html/lit-html.js';

const TICK = svg`<path d="M13 25 l8 8 l15 -17" fill="none" stroke="currentColor" stroke-width="5"></path>`;

/** @type {Record<string, unknown>} */
export const MARKS = {
  accepted: svg`<circle cx="24" cy="24" r="21" fill="none" stroke="currentColor" stroke-width="4"></circle>${TICK}`,
  conditional: svg`
    <circle cx="24" cy="24" r="21" fill="none" stroke="currentColor" stroke-width="4" stroke-dasharray="8 5"></circle>${TICK}`,
  rejected: svg`
    <path d="M15 3 h18 l12 12 v18 l-12 12 h-18 l-12 -12 v-18 z" fill="none" stroke="currentColor" stroke-width="4"></path>
    <path d="M15 15 l18 18 m0 -18 l-18 18" fill="none" stroke="currentColor" stroke-width="5"></path>`,
  incomplete: svg`
    <path d="M24 4 L46 43 H2 z" fill="none" stroke="currentColor" stroke-width="4"></path>
    <path d="M24 17 v13 m0 4 v5" fill="none" stroke="currentColor" stroke-width="5"></path>`,
};
