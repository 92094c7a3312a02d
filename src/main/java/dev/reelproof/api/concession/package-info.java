/** Routes of concessions. */
@NullMarked
package dev.reelproof.api.concession;

import org.jspecify.annotations.NullMarked;
