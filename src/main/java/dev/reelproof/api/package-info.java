/**
 * The HTTP edge: resources, the documents that they speak, problem documents, and the use cases that join intake, judgement and store.
 *
 * <p>May use every room above.
 */
package dev.reelproof.api;
