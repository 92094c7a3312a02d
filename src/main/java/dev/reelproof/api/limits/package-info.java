/** HTTP of limit sets. */
package dev.reelproof.api.limits;
