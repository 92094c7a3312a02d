/** Readers of results: the JSON document, CSV and network files beside it. May use the core. */
package dev.reelproof.intake.result;
