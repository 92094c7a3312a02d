/**
 * The PostgreSQL that the program brings with it: unpacked, made, started, watched and stopped in the data folder.
 *
 * <p>It knows nothing of what the database holds. Each stage is made complete in a folder of its own and takes its place in one
 * rename, so that a start that was killed leaves nothing that hands must clear away.
 */
@NullMarked
package dev.reelproof.store.server;

import org.jspecify.annotations.NullMarked;
