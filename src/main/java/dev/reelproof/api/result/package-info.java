/** HTTP of results, records and findings. */
package dev.reelproof.api.result;
