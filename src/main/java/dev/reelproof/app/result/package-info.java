/** Taking a result: read, judged, kept; and what else a failed reel could be. */
@NullMarked
package dev.reelproof.app.result;

import org.jspecify.annotations.NullMarked;
