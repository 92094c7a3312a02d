/** Use cases of concessions: to ask for one, to approve or refuse it, to find them. */
@NullMarked
package dev.reelproof.app.concession;

import org.jspecify.annotations.NullMarked;
