/** Taking a result: read, judged, kept; and what else a failed reel could be. */
package dev.reelproof.app.result;
