// The order in which findings are told.

/** The outcomes that are told as reasons, the gravest first; a plain pass is none. */
const GRAVEST_FIRST = ['fail', 'conditional-fail', 'not-tested', 'conditional-pass'];

/**
 * The findings that are no plain pass, the gravest first, else in their own order.
 *
 * @param {Answer.Finding[]} findings
 */
export const reasonsFirst = (findings) =>
  GRAVEST_FIRST.flatMap((outcome) => findings.filter((finding) => finding.outcome === outcome));
