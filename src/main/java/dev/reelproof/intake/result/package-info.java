/** Readers of results: the JSON document, CSV and network files beside it. May use the core. */
@NullMarked
package dev.reelproof.intake.result;

import org.jspecify.annotations.NullMarked;
