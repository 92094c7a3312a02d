/** What can be done about a reel that fails: how far to cut it back, and which other limit sets it would meet. */
@NullMarked
package dev.reelproof.judgement.advice;

import org.jspecify.annotations.NullMarked;
