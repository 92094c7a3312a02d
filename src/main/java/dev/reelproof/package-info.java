/** Where the program begins: as the service, or as one of its commands. Uses every room; no room uses it. */
@NullMarked
package dev.reelproof;

import org.jspecify.annotations.NullMarked;
