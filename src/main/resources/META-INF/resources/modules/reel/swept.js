// Which properties have curves worth asking for.

/**
 * @param {Answer.Finding} finding
 */
const mayHaveCurves = (finding) => finding.frequency !== null
  || (finding.swept && finding.printed === null && finding.obstacles[0]?.kind !== 'no-data');

/**
 * The properties judged along frequency, or measured along it in vain, each once.
 *
 * @param {Answer.Finding[]} findings
 */
export const sweptProperties = (findings) => [...new Set(findings.filter(mayHaveCurves).map((finding) => finding.property))];
